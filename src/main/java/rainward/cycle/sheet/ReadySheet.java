package rainward.cycle.sheet;

import static rainward.cycle.sheet.Shown.local;
import static rainward.cycle.sheet.Shown.rounded;

import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rainward.cycle.Outlook;
import rainward.readiness.Figures;
import rainward.readiness.Readiness;
import rainward.stand.StandOutlook;

/**
 * One field's readiness as a line of a table, times in the farm's zone: what {@code ready --json}
 * prints for each field.
 *
 * @param field its name
 * @param readiness 0 to 100
 * @param mix that the chances hold for
 * @param chanceNow of a stand when seeded at the next possible hour, 0 to 1
 * @param bestChance of a stand when seeded at the best hour ahead, 0 to 1
 * @param bestSeedAt that hour
 * @param parts rain, moisture and heat apart, each 0 to 100
 * @param gates what stops it, in words
 * @param reason one line
 * @param numbers behind it, where it was reckoned
 */
public record ReadySheet(
        String field,
        int readiness,
        String mix,
        double chanceNow,
        double bestChance,
        Optional<OffsetDateTime> bestSeedAt,
        Readiness.Parts parts,
        List<String> gates,
        String reason,
        Optional<Numbers> numbers) {

    public ReadySheet {
        gates = List.copyOf(gates);
    }

    /**
     * The numbers behind a readiness; ranges run from one trace in ten to nine in ten.
     *
     * @param nextSeedAt the next possible hour, from which all is seen
     * @param worth of a stand seeded then, and at the best hour; 0 to 1
     * @param rain that would start the seed
     * @param seedbed that it would lie in
     * @param emergenceDays from seeding, over the traces where a stand comes up [d]
     * @param losses expected share of live seed lost, by cause
     * @param bySeedingHour chance of a stand by the hour that seed goes in
     * @param sensitivities worth if one factor alone were perfect, the greatest gain first
     */
    public record Numbers(
            OffsetDateTime nextSeedAt,
            Worth worth,
            Rain rain,
            Seedbed seedbed,
            Optional<Figures.Range> emergenceDays,
            StandOutlook.Losses losses,
            HourlyChance bySeedingHour,
            List<Sensitivity> sensitivities) {

        public Numbers {
            sensitivities = List.copyOf(sensitivities);
        }
    }

    /** Expected worth, 0 to 1. */
    public record Worth(double now, double best) {}

    /** Rain that would start the seed; arrival and amount over the traces that have one. */
    public record Rain(
            double chance,
            Optional<OffsetDateTime> earliest,
            Optional<OffsetDateTime> middle,
            Optional<OffsetDateTime> latest,
            Optional<Figures.Range> amountMm,
            double hardChance) {}

    /** Water and heat where the seed would lie. */
    public record Seedbed(
            double depthCm,
            Figures.Range waterFraction,
            double meanTempC,
            double hottestSurfaceC) {}

    /** Chance of a stand by seeding hour, from {@code start} on. */
    public record HourlyChance(OffsetDateTime start, double[] chance) {}

    /** Worth gained if one factor alone were perfect. */
    public record Sensitivity(String factor, double perfectWorth, double gain) {}

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
                chances.mix(),
                thousandths(chances.now()),
                thousandths(chances.best()),
                chances.bestSeedAt().map(at -> local(at, zone)),
                readiness.parts(),
                readiness.gates().stream().map(Readiness.Gate::words).toList(),
                readiness.reason(),
                readiness.figures().map(figures -> numbers(figures, zone)));
    }

    private static Numbers numbers(Figures figures, ZoneId zone) {
        Figures.Stand stand = figures.stand();
        StandOutlook outlook = stand.outlook();
        return new Numbers(
                local(figures.nextSeedAt(), zone),
                new Worth(thousandths(stand.worth()), thousandths(stand.bestWorth())),
                rain(figures.rain(), zone),
                seedbed(figures.seedbed()),
                Optional.of(stand.emergence())
                        .filter(StandOutlook.EmergenceRange::known)
                        .map(d -> range(
                                new Figures.Range(d.p10Days(), d.p50Days(), d.p90Days()), 10)),
                new StandOutlook.Losses(
                        thousandths(stand.losses().falseStartFraction()),
                        thousandths(stand.losses().washOutFraction()),
                        thousandths(stand.losses().heatFraction()),
                        thousandths(stand.losses().stillDryFraction())),
                new HourlyChance(
                        local(outlook.start(), zone),
                        Arrays.stream(outlook.chance())
                                .map(ReadySheet::thousandths)
                                .toArray()),
                figures.sensitivities().stream().map(ReadySheet::sensitivity).toList());
    }

    private static Rain rain(Figures.Rain rain, ZoneId zone) {
        Optional<Figures.FirstRain> first = rain.first();
        return new Rain(
                thousandths(rain.chance()),
                first.map(f -> local(f.earliest(), zone)),
                first.map(f -> local(f.middle(), zone)),
                first.map(f -> local(f.latest(), zone)),
                first.map(f -> range(f.amountMm(), 10)),
                thousandths(rain.hardChance()));
    }

    private static Seedbed seedbed(Figures.Seedbed bed) {
        return new Seedbed(
                bed.depthCm(),
                range(bed.waterFraction(), 1000),
                rounded(bed.meanTempC(), 10),
                rounded(bed.hottestSurfaceC(), 10));
    }

    private static Sensitivity sensitivity(Figures.Sensitivity one) {
        return new Sensitivity(
                one.factor().name().toLowerCase(Locale.ROOT),
                thousandths(one.perfectWorth()),
                thousandths(one.gain()));
    }

    private static Figures.Range range(Figures.Range range, int steps) {
        return new Figures.Range(
                rounded(range.low(), steps),
                rounded(range.middle(), steps),
                rounded(range.high(), steps));
    }

    private static double thousandths(double chance) {
        return rounded(chance, 1000);
    }
}
