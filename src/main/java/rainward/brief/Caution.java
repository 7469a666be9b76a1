package rainward.brief;

import java.util.List;
import rainward.brief.making.HeatIndex;
import rainward.farm.Operation;
import rainward.farm.Window;

/**
 * A danger of the day. What is said of it is general; labels, local codes and licensed practice go
 * before it.
 */
public sealed interface Caution {

    /**
     * Heat that asks for more than water.
     *
     * @param property where it feels hottest
     * @param heatIndexC highest of the day, in the shade [C]
     * @param when hours in which the step of care is at least moderate
     * @param care step of the highest
     */
    record Heat(String property, double heatIndexC, Window when, HeatIndex.Care care)
            implements Caution {}

    /**
     * Rain today, so thunder too.
     *
     * @param properties where
     * @param chance of rain in the likeliest six hours, 0 to 1
     */
    record Thunder(List<String> properties, double chance) implements Caution {

        public Thunder {
            properties = List.copyOf(properties);
        }
    }

    /**
     * Wind while something is sprayed or spread.
     *
     * @param operation what is done
     * @param property where
     * @param when the work is planned
     * @param leastMps weakest wind of these hours, at 2 m [m/s]
     * @param greatestMps strongest wind of these hours, at 2 m [m/s]
     */
    record Wind(
            Operation operation, String property, Window when, double leastMps, double greatestMps)
            implements Caution {}

    /**
     * Machines on public roads.
     *
     * @param drivingHours of all machines today [h]
     */
    record Road(double drivingHours) implements Caution {}

    /**
     * Slopes that may turn a machine over.
     *
     * @param fields that are worked today
     * @param steepestFraction of them, rise over run
     */
    record Slope(List<String> fields, double steepestFraction) implements Caution {

        public Slope {
            fields = List.copyOf(fields);
        }
    }

    /** Dust of lime, fertilizer or treated seed. */
    record Dust() implements Caution {}

    /** Spraying, whatever the wind. */
    record Spray() implements Caution {}
}
