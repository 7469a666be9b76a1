package rainward.daemon.demo;

import java.time.Duration;
import java.time.Instant;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import rainward.daemon.settings.Spelled;

/**
 * What goes wrong in a week of trials. Two long outages are written down, since a week of luck may
 * have none: the first service is out for all of the third day, every service from the evening
 * before the fifth day's brief to its end. Beside them each service has a fault of its own in some
 * hours, drawn from a seed.
 */
final class FaultSchedule {

    /** One hour in that many has a fault of its own. */
    private static final int ONE_IN = 5;

    private static final int DAY = 24;

    private final Instant start;
    private final long seed;

    FaultSchedule(Instant start, long seed) {
        this.start = start;
        this.seed = seed;
    }

    /** Services that the local server plays. */
    enum Part {
        NWS,
        MET_NORWAY,
        ALERTS,
        ACIS
    }

    /** What a service does instead of answering. */
    enum Fault {
        ERROR_500("500"),
        PROBLEM_503("503 problem"),
        PAGE_503("503 page"),
        PAGE_200("200 page"),
        EMPTY("empty"),
        CUT("cut in half"),
        ERROR_INSIDE("200 with an error inside"),
        NULLS("null in place of data"),
        LIMIT("429"),
        LIMIT_FOR_MINUTES("429 for 20 min"),
        NOT_FOUND("404"),
        HANG_UP("hung up");

        private final String words;

        Fault(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }

    /** The fault of a service in the hour of a moment. */
    Optional<Fault> at(Part part, Instant moment) {
        long hour = Duration.between(start, moment).toHours();
        if (outage(part, hour)) {
            return Optional.of(part == Part.NWS ? Fault.PROBLEM_503 : Fault.PAGE_503);
        }
        var luck =
                new SplittableRandom(seed + 1_000_003 * hour + 31L * part.name().hashCode());
        luck.nextInt();
        Fault[] all = Fault.values();
        // The first hour is fair: a service that never had an answer has none to fall back on.
        return hour > 0 && luck.nextInt(ONE_IN) == 0
                ? Optional.of(all[luck.nextInt(all.length)])
                : Optional.empty();
    }

    private static boolean outage(Part part, long hour) {
        boolean thirdDay = hour >= 2 * DAY && hour < 3 * DAY;
        boolean fifthDay = hour >= 4 * DAY - 6 && hour < 4 * DAY + 16;
        return fifthDay || (part == Part.NWS && thirdDay);
    }

    /** Counts what was asked and what went wrong, until it is read. */
    static final class Tally {

        private final Map<Part, Integer> asked = new EnumMap<>(Part.class);
        private final Map<String, Integer> faults = new HashMap<>();

        synchronized void count(Part part, Optional<Fault> fault) {
            asked.merge(part, 1, Integer::sum);
            fault.ifPresent(
                    f -> faults.merge(Spelled.dashed(part) + " " + f.words(), 1, Integer::sum));
        }

        /** Questions by service since the last reading. */
        synchronized Map<String, Integer> asked() {
            Map<String, Integer> all = new java.util.TreeMap<>();
            asked.forEach((part, count) -> all.put(Spelled.dashed(part), count));
            asked.clear();
            return all;
        }

        /** Faults by service and kind since the last reading. */
        synchronized Map<String, Integer> faults() {
            Map<String, Integer> all = new java.util.TreeMap<>(faults);
            faults.clear();
            return all;
        }
    }
}
