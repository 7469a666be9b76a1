package rainward.soil.column;

import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * Traces put in order by the water of the top and cut into groups of nearly equal number.
 *
 * @param middles the middle trace of each group, the driest group first
 * @param groupOf the group of each trace
 */
record WetnessGroups(int[] middles, int[] groupOf) {

    private static final double TOP_CM = 10;

    static WetnessGroups of(ColumnStep step, int groups) {
        double[] topMm = new double[step.traces];
        for (int l = 0; l < step.layers.count() && step.layers.bottomCm(l) <= TOP_CM; l++) {
            for (int i = 0; i < topMm.length; i++) {
                topMm[i] += step.water.waterMm[l][i];
            }
        }
        int[] order = IntStream.range(0, topMm.length)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> topMm[i]))
                .mapToInt(i -> i)
                .toArray();
        int count = Math.min(groups, order.length);
        int[] middles = new int[groups];
        int[] groupOf = new int[order.length];
        for (int g = 0; g < groups; g++) {
            middles[g] =
                    order[Math.min(order.length - 1, (2 * g + 1) * order.length / (2 * count))];
        }
        for (int rank = 0; rank < order.length; rank++) {
            groupOf[order[rank]] = rank * count / order.length;
        }
        return new WetnessGroups(middles, groupOf);
    }
}
