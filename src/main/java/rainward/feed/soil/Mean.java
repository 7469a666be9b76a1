package rainward.feed.soil;

import java.util.OptionalDouble;

/** A weighted mean of what is known. */
final class Mean {

    private double sum;
    private double weights;

    void add(OptionalDouble value, double weight) {
        value.ifPresent(v -> {
            sum += v * weight;
            weights += weight;
        });
    }

    OptionalDouble value() {
        return weights > 0 ? OptionalDouble.of(sum / weights) : OptionalDouble.empty();
    }
}
