package rainward.readiness;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.time.format.TextStyle;
import java.util.Locale;

/** Times as people say them: {@code tonight}, {@code Thursday dawn}. */
final class WhenWords {
    private final ReadinessCase.Teller teller;

    WhenWords(ReadinessCase.Teller teller) {
        this.teller = teller;
    }

    /** An hour to come. */
    String of(Instant instant) {
        ZonedDateTime then = instant.atZone(teller.zone());
        ZonedDateTime now = teller.asOf().atZone(teller.zone());
        LocalDate today = now.toLocalDate();
        String part = part(then.getHour());
        if (then.toLocalDate().equals(today)) {
            return switch (part) {
                case "night" -> then.getHour() < 4 ? "before dawn" : "tonight";
                case "dawn" -> "at dawn";
                default -> "this " + part;
            };
        }
        if (then.toLocalDate().equals(today.plusDays(1)) && then.getHour() < 4) {
            return "tonight";
        }
        String day = then.toLocalDate().equals(today.plusDays(1))
                ? "tomorrow"
                : then.getDayOfWeek().getDisplayName(TextStyle.FULL, Locale.ENGLISH);
        return then.getHour() < 4 ? "early " + day : day + " " + part;
    }

    private static String part(int hour) {
        if (hour < 4 || hour >= 21) {
            return "night";
        }
        if (hour < 8) {
            return "dawn";
        }
        if (hour < 12) {
            return "morning";
        }
        return hour < 17 ? "afternoon" : "evening";
    }
}
