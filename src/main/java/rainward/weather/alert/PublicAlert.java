package rainward.weather.alert;

import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import rainward.farm.Require;
import rainward.farm.Window;

/**
 * A public warning that touches a place, in the terms of the Common Alerting Protocol (OASIS CAP
 * 1.2).
 *
 * @param id of this message
 * @param message what it says
 * @param rank how grave, how sure, how soon
 * @param times when it holds
 * @param replaces ids of the messages that this one stands in for
 */
public record PublicAlert(
        String id, Message message, Rank rank, Times times, Set<String> replaces) {

    public PublicAlert {
        Require.named("alert id", id);
        replaces = Set.copyOf(replaces);
    }

    /**
     * Words of the message.
     *
     * @param type first issue, update or cancellation
     * @param event what is expected, in the service's own words
     * @param headline one line, may be blank
     * @param instruction what to do, may be blank
     * @param area described in words
     */
    public record Message(
            Type type, String event, String headline, String instruction, String area) {}

    /** Kind of message. */
    public enum Type {
        ALERT,
        UPDATE,
        CANCEL
    }

    /**
     * CAP severity, certainty and urgency.
     *
     * @param severity how grave
     * @param certainty as given, for instance {@code Likely}
     * @param urgency as given, for instance {@code Expected}
     */
    public record Rank(Severity severity, String certainty, String urgency) {}

    /** CAP severity, least first. */
    public enum Severity {
        UNKNOWN,
        MINOR,
        MODERATE,
        SEVERE,
        EXTREME
    }

    /**
     * When the message and its event hold.
     *
     * @param sentAt when the message was sent
     * @param startsAt onset, or else when it took effect
     * @param endsAt end of the event, or else expiry of the message; empty: no end given
     */
    public record Times(Instant sentAt, Instant startsAt, Optional<Instant> endsAt) {

        public boolean endedAt(Instant asOf) {
            return endsAt.isPresent() && !asOf.isBefore(endsAt.get());
        }
    }

    /**
     * Danger that matters to field work, from the event's name; unknown names are {@code OTHER}.
     */
    public Danger danger() {
        return Danger.of(message.event());
    }

    /** True where the event touches a stretch of time. */
    public boolean touches(Window window) {
        return times.startsAt().isBefore(window.to())
                && times.endsAt().map(end -> end.isAfter(window.from())).orElse(true);
    }

    /** Dangers that change the plan or the brief. */
    public enum Danger {
        THUNDERSTORM,
        TORNADO,
        FLOOD,
        WIND,
        HEAT,
        FROST,
        OTHER;

        static Danger of(String event) {
            String name = event.toLowerCase(Locale.ROOT);
            if (name.contains("tornado")) {
                return TORNADO;
            }
            if (name.contains("thunderstorm")) {
                return THUNDERSTORM;
            }
            if (name.contains("flood") || name.contains("hydrologic")) {
                return FLOOD;
            }
            return ofAir(name);
        }

        private static Danger ofAir(String name) {
            if (name.contains("heat")) {
                return HEAT;
            }
            if (name.contains("frost") || name.contains("freeze") || name.contains("cold")) {
                return FROST;
            }
            return name.contains("wind") ? WIND : OTHER;
        }
    }
}
