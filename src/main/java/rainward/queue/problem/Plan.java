package rainward.queue.problem;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * An order that can be given out.
 *
 * @param asOf the moment of planning
 * @param items in order of start, then machine
 * @param leftOut fields that do not fit, with why
 * @param value what it earns and costs
 */
public record Plan(Instant asOf, List<PlanItem> items, List<LeftOut> leftOut, Value value) {

    public Plan {
        items = List.copyOf(items);
        leftOut = List.copyOf(leftOut);
    }

    /** The seeding item of a field, if the field is in the order. */
    public Optional<PlanItem> seedingOf(String field) {
        return items.stream()
                .filter(i -> i.sowing().isPresent() && i.place().field().equals(field))
                .findFirst();
    }

    /** Why a field is not in the order; empty where nothing is said of it. */
    public Optional<String> whyLeftOut(String field) {
        return leftOut.stream()
                .filter(left -> left.field().equals(field))
                .map(LeftOut::why)
                .findFirst();
    }

    /**
     * A field that is not in the order.
     *
     * @param field its name
     * @param why in words
     */
    public record LeftOut(String field, String why) {}

    /**
     * What the order is worth, in hectares of full stand, weighted by priority.
     *
     * @param earnedHa sum of priority x area x worth
     * @param keptHa the same of fields whose seed is kept for later days, as far as is expected
     * @param drivingHa price of driving
     * @param overtimeHa price of overtime
     * @param changeHa price of change against the last order
     */
    public record Value(
            double earnedHa, double keptHa, double drivingHa, double overtimeHa, double changeHa) {

        /** Earned and kept, less all prices. */
        public double totalHa() {
            return earnedHa + keptHa - drivingHa - overtimeHa - changeHa;
        }
    }
}
