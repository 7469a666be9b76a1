package rainward.stand;

import java.util.Arrays;
import rainward.soil.SoilRun;

/**
 * Some traces turned from rows of hours into columns, one trace after the other in memory, so that
 * what follows one seed through time stays in the cache.
 */
final class TraceColumns {
    /** Traces that share the cache lines of their rows. */
    static final int WIDTH = 8;

    private final StandCase question;
    private final SurfaceDamage damage;
    private final double contact;
    private final Column[] columns;

    TraceColumns(StandCase question, SurfaceDamage damage) {
        this.question = question;
        this.damage = damage;
        contact = SeedPlacement.contact(question.conditions());
        columns = new Column[WIDTH];
        Arrays.setAll(columns, i -> new Column(question.soil().hours()));
    }

    /** Column {@code i} of those loaded last. */
    Column column(int i) {
        return columns[i];
    }

    /** Takes up to {@link #WIDTH} traces from {@code first} on; gives their number. */
    int load(int first) {
        SoilRun soil = question.soil();
        int count = Math.min(WIDTH, soil.traces() - first);
        for (int h = 0; h < soil.hours(); h++) {
            double[] potential = soil.seedZone().potentialMpa()[h];
            double[] temp = soil.seedZone().tempC()[h];
            double[] surfaceTemp = soil.seedZone().surfaceTempC()[h];
            double[] dryFront = soil.surface().dryFrontCm()[h];
            double[] rain = question.traces().rainMm()[h];
            for (int i = 0; i < count; i++) {
                Column column = columns[i];
                column.potentialMpa[h] = potential[first + i];
                column.feltPotentialMpa[h] = potential[first + i] / contact;
                column.tempC[h] = temp[first + i];
                column.surfaceTempC[h] = surfaceTemp[first + i];
                column.dryFrontCm[h] = dryFront[first + i];
                column.rain(h, rain[first + i] > 0 ? first + i : -1);
            }
        }
        return count;
    }

    /** One trace, by hour. */
    final class Column {
        final double[] potentialMpa;

        /** What the seed feels of it through its contact with the soil. */
        final double[] feltPotentialMpa;

        final double[] tempC;
        final double[] surfaceTempC;
        final double[] dryFrontCm;

        /** Share of seed that rills leave in place. */
        final double[] stayingFraction;

        /** Share of small seed that is sealed in. */
        final double[] sealedFraction;

        Column(int hours) {
            potentialMpa = new double[hours];
            feltPotentialMpa = new double[hours];
            tempC = new double[hours];
            surfaceTempC = new double[hours];
            dryFrontCm = new double[hours];
            stayingFraction = new double[hours];
            sealedFraction = new double[hours];
        }

        private void rain(int hour, int trace) {
            if (trace < 0) {
                stayingFraction[hour] = 1;
                sealedFraction[hour] = 0;
                return;
            }
            double rainMm = question.traces().rainMm()[hour][trace];
            double peak30MmPerH = question.traces().peak30MmPerH()[hour][trace];
            stayingFraction[hour] = damage.stayingFraction(rainMm, peak30MmPerH);
            sealedFraction[hour] = damage.sealedFraction(rainMm, peak30MmPerH);
        }
    }
}
