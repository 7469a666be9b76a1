package rainward.cycle;

import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rainward.readiness.Readiness;

/**
 * One field's readiness as a line of a table, times in the farm's zone: what {@code ready --json}
 * prints for each field.
 *
 * @param field its name
 * @param readiness 0 to 100
 * @param chanceNow of a stand when seeded at the next possible hour, 0 to 1
 * @param bestChance of a stand when seeded at the best hour ahead, 0 to 1
 * @param bestSeedAt that hour
 * @param parts rain, moisture and heat apart, each 0 to 100
 * @param gates what stops it, in words
 * @param reason one line
 */
public record ReadySheet(
        String field,
        int readiness,
        double chanceNow,
        double bestChance,
        Optional<OffsetDateTime> bestSeedAt,
        Readiness.Parts parts,
        List<String> gates,
        String reason) {

    public ReadySheet {
        gates = List.copyOf(gates);
    }

    /** Every waiting field, the readiest first. */
    public static List<ReadySheet> of(Outlook outlook, ZoneId zone) {
        return outlook.fields().stream()
                .filter(field -> field.item().status().waiting())
                .map(field -> of(field.readiness(), zone))
                .sorted(Comparator.comparingInt(ReadySheet::readiness)
                        .reversed()
                        .thenComparing(ReadySheet::field))
                .toList();
    }

    private static ReadySheet of(Readiness readiness, ZoneId zone) {
        Readiness.Chances chances = readiness.chances();
        return new ReadySheet(
                readiness.field(),
                readiness.score(),
                thousandths(chances.now()),
                thousandths(chances.best()),
                chances.bestSeedAt().map(at -> at.atZone(zone).toOffsetDateTime()),
                readiness.parts(),
                readiness.gates().stream().map(Readiness.Gate::words).toList(),
                readiness.reason());
    }

    private static double thousandths(double chance) {
        return Math.round(chance * 1000) / 1000.0;
    }
}
