package rainward.daemon.replay;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import rainward.daemon.settings.Spelled;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;
import rainward.replay.Replay;
import rainward.replay.crew.Policy;
import rainward.replay.score.FieldResult;
import rainward.replay.score.SeasonResult;
import rainward.soil.verify.StationDay;

/**
 * One season day by day: the rain at the station, what each of two policies seeded, and what came
 * of it.
 *
 * @param season that is told
 * @param asked with its weather
 * @param policies one a column
 */
record Story(SeasonResult season, Replay.Asked asked, List<Policy> policies) {

    private static final int LONGEST_DAYS = 60;

    List<List<String>> rows() {
        List<List<String>> rows = new ArrayList<>();
        List<String> head = new ArrayList<>(List.of("day", "rain"));
        policies.forEach(p -> head.add(p.words()));
        rows.add(head);
        for (int d = 0; d < LONGEST_DAYS; d++) {
            LocalDate day = season.start().plusDays(d);
            List<String> sown = policies.stream().map(p -> sown(p, day)).toList();
            String rain = rain(day);
            if (!rain.isEmpty() || sown.stream().anyMatch(s -> !s.isEmpty())) {
                List<String> row = new ArrayList<>(List.of(day.toString(), rain));
                row.addAll(sown);
                rows.add(row);
            }
        }
        return rows;
    }

    private String rain(LocalDate day) {
        return asked.year().days().stream()
                .map(StationDay::weather)
                .filter(w -> w.day().equals(day))
                .flatMapToDouble(w -> w.rainMm().stream())
                .filter(mm -> mm > 0)
                .mapToObj(mm -> String.format(
                        Locale.US, "%.2f in", UnitSystem.US_CUSTOMARY.shown(Quantity.RAIN, mm)))
                .findFirst()
                .orElse("");
    }

    private String sown(Policy policy, LocalDate day) {
        return season.by(policy).stream()
                .flatMap(score -> score.fields().stream())
                .filter(f -> local(f).equals(day))
                .map(Story::words)
                .collect(Collectors.joining("; "));
    }

    /** By the sun's clock at the place: near enough to tell the day of daytime work. */
    private LocalDate local(FieldResult field) {
        int hours = (int) Math.round(asked.year().place().longitudeDeg() / 15);
        return LocalDate.ofInstant(field.seededAt(), ZoneOffset.ofHours(hours));
    }

    private static String words(FieldResult field) {
        String told = Double.isNaN(field.toldChance())
                ? ""
                : " (told " + Math.round(100 * field.toldChance()) + " %)";
        String came =
                field.model().stand() ? "up" : Spelled.spaced(field.model().cause());
        return field.field() + told + ": " + came;
    }
}
