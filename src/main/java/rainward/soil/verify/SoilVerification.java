package rainward.soil.verify;

import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import rainward.farm.Require;

/** Runs the column at stations under short grass and compares it with their sensors. */
public final class SoilVerification {

    /** Stations with fewer sensor days in May to September stay out of the medians. */
    public static final int LEAST_DAYS = 120;

    /** Rise of the water content that counts as wetted [m3/m3]. */
    private static final double WETTED = 0.02;

    private SoilVerification() {}

    /**
     * Figures of all stations and their medians.
     *
     * @param years at least one with {@value #LEAST_DAYS} sensor days
     */
    public static SoilReport of(List<StationYear> years) {
        List<StationTrial> trials = years.stream()
                .sorted(Comparator.comparing(StationYear::station))
                .map(StationTrial::new)
                .filter(trial -> trial.sensorDays() > 1)
                .toList();
        List<StationTrial> eligible = trials.stream()
                .filter(trial -> trial.sensorDays() >= LEAST_DAYS)
                .toList();
        Require.that(
                !eligible.isEmpty(),
                "no station has " + LEAST_DAYS + " sensor days from May to September");
        return new SoilReport(
                trials.stream().map(StationTrial::figures).toList(),
                median(eligible.stream().map(StationTrial::figures).toList()),
                wetting(eligible.stream()
                        .flatMap(trial -> trial.wettings().stream())
                        .toList()));
    }

    private static SoilReport.Figures median(List<SoilReport.Figures> all) {
        return new SoilReport.Figures(
                "median of " + all.size(),
                (int) median(all, SoilReport.Figures::days),
                median(all, SoilReport.Figures::r),
                median(all, SoilReport.Figures::ubRmse),
                median(all, SoilReport.Figures::bias),
                median(all, SoilReport.Figures::bucketR),
                median(all, SoilReport.Figures::bucketUbRmse),
                median(all, SoilReport.Figures::persistenceUbRmse),
                median(all, SoilReport.Figures::soilTempRmseC),
                new SoilReport.Told(
                        median(all, f -> f.told().startPersistenceUbRmse()),
                        median(all, f -> f.told().dayPersistenceUbRmse()),
                        median(all, f -> f.told().dayUbRmse()),
                        median(all, f -> f.told().weekUbRmse())));
    }

    private static double median(
            List<SoilReport.Figures> all, ToDoubleFunction<SoilReport.Figures> figure) {
        double[] known = all.stream()
                .mapToDouble(figure)
                .filter(v -> !Double.isNaN(v))
                .sorted()
                .toArray();
        int middle = known.length / 2;
        return known.length % 2 == 1
                ? known[middle]
                : known.length == 0 ? Double.NaN : (known[middle - 1] + known[middle]) / 2;
    }

    private static SoilReport.Wetting wetting(List<StationTrial.Wetted> all) {
        return new SoilReport.Wetting(
                all.size(),
                share(all, StationTrial.Wetted::measuredFraction),
                share(all, StationTrial.Wetted::modelFraction));
    }

    private static double share(
            List<StationTrial.Wetted> all, ToDoubleFunction<StationTrial.Wetted> rise) {
        long wetted = all.stream().mapToDouble(rise).filter(r -> r > WETTED).count();
        return all.isEmpty() ? 0 : wetted / (double) all.size();
    }
}
