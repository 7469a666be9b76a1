package rainward.weather.skill;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import rainward.farm.Require;

/**
 * What past forecasts teach about a chance of rain: by lead time, the rising curve closest to what
 * was seen. A class of lead times stays as it is until it has enough cases. Forty imagined cases of
 * a perfectly reliable forecast, spread evenly over all chances, keep a few cases from saying
 * "never" or "always" (our own choice, no source). A chance of zero stays zero.
 */
public record Recalibration(Map<LeadClass, IsotonicCurve> curves, Map<LeadClass, Integer> cases) {

    /**
     * Cases of one class of lead times before it is used: four a day for fifty days. With fewer,
     * the share of wet ones among those of like chance is known to no better than a tenth either
     * way (40 cases in each of five levels: standard error {@code sqrt(0.25 / 40) = 0.08}), and a
     * good forecast would be made worse. Our own choice, no source.
     */
    public static final int USUAL_LEAST_CASES = 200;

    /** Leaves every chance as it is. */
    public static final Recalibration NONE = new Recalibration(Map.of(), Map.of());

    private static final double IMAGINED_CASES = 40;
    private static final int IMAGINED_CHANCES = 20;

    public Recalibration {
        curves = Map.copyOf(curves);
        cases = Map.copyOf(cases);
    }

    /**
     * Learns from past cases.
     *
     * @param past forecasts with what came of them
     * @param leastCases of one class of lead times before it is used, at least 1
     */
    public static Recalibration of(List<ForecastCase> past, int leastCases) {
        Require.inRange("leastCases", leastCases, 1, 1_000_000);
        Map<LeadClass, IsotonicCurve> curves = new EnumMap<>(LeadClass.class);
        Map<LeadClass, Integer> cases = new EnumMap<>(LeadClass.class);
        for (LeadClass lead : LeadClass.values()) {
            List<ForecastCase> here = lead.of(past);
            cases.put(lead, here.size());
            if (here.size() >= leastCases) {
                curves.put(lead, curve(here));
            }
        }
        return new Recalibration(curves, cases);
    }

    private static IsotonicCurve curve(List<ForecastCase> cases) {
        Stream<IsotonicCurve.Point> imagined = IntStream.range(0, IMAGINED_CHANCES)
                .mapToDouble(i -> (i + 0.5) / IMAGINED_CHANCES)
                .mapToObj(p -> new IsotonicCurve.Point(p, p, IMAGINED_CASES / IMAGINED_CHANCES));
        Stream<IsotonicCurve.Point> seen =
                cases.stream().map(c -> new IsotonicCurve.Point(c.probability(), c.outcome(), 1));
        return IsotonicCurve.through(Stream.concat(imagined, seen).toList());
    }

    /** What past cases teach, once a class of lead times has the usual number of them. */
    public static Recalibration of(List<SeenChance> seen) {
        return of(SeenChance.forecasts(seen), USUAL_LEAST_CASES);
    }

    /** True where any lead time has enough cases. */
    public boolean knowsAnything() {
        return !curves.isEmpty();
    }

    /** True where a lead time has enough cases. */
    public boolean knows(double leadHours) {
        return curves.containsKey(LeadClass.of(leadHours));
    }

    /** Cases seen of the class of a lead time. */
    public int cases(double leadHours) {
        return cases.getOrDefault(LeadClass.of(leadHours), 0);
    }

    /**
     * The chance that a forecast chance has turned out to mean.
     *
     * @param probability forecast, 0 to 1
     * @param leadHours from issue to the start of the period [h]
     * @return 0 to 1; as forecast where too little is known
     */
    public double apply(double probability, double leadHours) {
        if (probability == 0) {
            return 0;
        }
        return Optional.ofNullable(curves.get(LeadClass.of(leadHours)))
                .map(curve -> Math.max(0, Math.min(1, curve.at(probability))))
                .orElse(probability);
    }
}
