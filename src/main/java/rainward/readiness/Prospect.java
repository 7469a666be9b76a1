package rainward.readiness;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import rainward.farm.Mix;
import rainward.soil.SoilRun;
import rainward.stand.StandOutlook;

/**
 * The field seen from its next possible hour: when that is, which mix is best then, and which hour
 * would be best of all.
 *
 * @param nextHour index into the outlook of the first hour in which seed could go in
 * @param bestHour index of the hour with the greatest expected worth from there on
 * @param option mix that brings most at the next hour, the wanted one where equal
 */
record Prospect(int nextHour, int bestHour, ReadinessCase.Option option) {

    /**
     * Looks for the next possible hour: stages done, crew at work, ground workable.
     *
     * @param question with weather and soil
     * @param options mixes that are in stock; not empty
     * @param workableShare share of traces that must say so
     * @return empty where no hour ahead is possible
     */
    static Optional<Prospect> of(
            ReadinessCase question, List<ReadinessCase.Option> options, double workableShare) {
        StandOutlook hours = options.get(0).outlook();
        ReadinessCase.Ahead ahead = question.ahead().orElseThrow();
        int shift = ahead.traces().hourOf(hours.start());
        int[] worked = worked(question, hours);
        return IntStream.of(worked)
                .filter(h -> workable(ahead.soil(), shift + h, workableShare))
                .boxed()
                .findFirst()
                .map(next -> from(IntStream.of(worked).filter(h -> h >= next).toArray(), options));
    }

    /** Hours in which the crew could seed once the stages before are done. */
    private static int[] worked(ReadinessCase question, StandOutlook hours) {
        int from = firstHour(question, hours.start());
        return IntStream.range(Math.max(0, from), hours.seedingHours())
                .filter(h -> question.work()
                        .hours()
                        .hold(hours.start()
                                .plusSeconds(3600L * h)
                                .atZone(question.teller().zone())))
                .toArray();
    }

    private static int firstHour(ReadinessCase question, Instant start) {
        Instant asOf = question.teller().asOf();
        Instant doneBy = question.work().doneBy();
        Instant ready = doneBy.isAfter(asOf) ? doneBy : asOf;
        return (int) Math.floorDiv(ready.getEpochSecond() - start.getEpochSecond(), 3600);
    }

    private static Prospect from(int[] hours, List<ReadinessCase.Option> options) {
        ReadinessCase.Option option = options.stream()
                .max(Comparator.comparingDouble(one -> peak(hours, one)))
                .orElseThrow();
        double[] worth = option.outlook().worth();
        int best = hours[0];
        for (int h : hours) {
            best = worth[h] > worth[best] + 1e-9 ? h : best;
        }
        return new Prospect(hours[0], best, option);
    }

    private static double peak(int[] hours, ReadinessCase.Option option) {
        double[] worth = option.outlook().worth();
        return worth[hours[0]] > 0
                ? 1 + worth[hours[0]]
                : IntStream.of(hours).mapToDouble(h -> worth[h]).max().orElse(0);
    }

    static boolean workable(SoilRun soil, int hour, double share) {
        int yes = 0;
        for (boolean fit : soil.surface().workable()[hour]) {
            yes += fit ? 1 : 0;
        }
        return yes >= share * soil.traces();
    }

    Mix mix() {
        return option.mix();
    }

    double chance() {
        return option.outlook().chance()[nextHour];
    }

    double bestChance() {
        return option.outlook().chance()[bestHour];
    }

    /** Worth now over worth at best, 0 to 1; zero where there is none to be had. */
    double shareOfBest() {
        double best = option.outlook().worth()[bestHour];
        return best > 0 ? option.outlook().worth()[nextHour] / best : 0;
    }

    Instant timeOf(int hour) {
        return option.outlook().start().plusSeconds(3600L * hour);
    }

    StandOutlook.Losses losses() {
        return option.outlook().losses().get(nextHour);
    }

    StandOutlook.EmergenceRange emergence() {
        return option.outlook().emergence().get(nextHour);
    }
}
