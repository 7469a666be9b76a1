package rainward.queue.sample;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Invented weather of eight days: when rain comes, how likely and how much.
 *
 * @param storms in order of time
 * @param dryChance chance of a stand without any rain, 0 to 1
 * @param windy days with wind in the afternoon, one entry for each of eight days
 */
record SampleWeather(List<Storm> storms, double dryChance, boolean[] windy) {

    SampleWeather {
        storms = List.copyOf(storms);
    }

    /**
     * Rain.
     *
     * @param startHour in which it begins
     * @param lengthHours for which it lasts
     * @param probability that it comes
     * @param rainMm how much
     */
    record Storm(double startHour, double lengthHours, double probability, double rainMm) {}

    /**
     * What a forecast says at some hour of rain that is still to come: the later it is, the more it
     * is off in time, by a twelfth of its lead at most, and in chance.
     *
     * @param hour in which the forecast is made
     * @param errors one for each storm
     */
    SampleWeather forecastAt(double hour, ForecastErrors errors) {
        List<Storm> seen = new ArrayList<>();
        for (int i = 0; i < storms.size(); i++) {
            Storm s = storms.get(i);
            double lead = Math.max(0, s.startHour - hour);
            double offHours = lead * errors.timeShare(i) / 12;
            double offChance = Math.min(0.2, lead / 480) * errors.chanceShare(i);
            double chance = Math.min(1, Math.max(0.05, s.probability + offChance));
            seen.add(new Storm(s.startHour + offHours, s.lengthHours, chance, s.rainMm));
        }
        return new SampleWeather(seen, dryChance, windy);
    }

    static SampleWeather of(GeneratedDays.Kind kind, SplittableRandom random) {
        boolean[] windy = new boolean[GeneratedDays.HORIZON_HOURS / 24];
        for (int d = 0; d < windy.length; d++) {
            windy[d] = random.nextDouble() < 0.3;
        }
        return new SampleWeather(storms(kind, random), random.nextDouble(0.1, 0.25), windy);
    }

    private static List<Storm> storms(GeneratedDays.Kind kind, SplittableRandom random) {
        List<Storm> storms = new ArrayList<>();
        switch (kind) {
            case DRY -> {}
            case DRIZZLE -> {
                for (int d = 1; d < 8; d++) {
                    storms.add(new Storm(24 * d + random.nextDouble(20), 3, 0.5, 3));
                }
            }
            case WET_SPELL -> {
                for (int d = 2; d < 5; d++) {
                    storms.add(new Storm(24 * d + random.nextDouble(12), 6, 0.8, 14));
                }
            }
            case ONE_STORM, CAPACITY_TO_SPARE ->
                storms.add(storm(random.nextDouble(58, 110), random));
            case TWO_STORMS, SCATTERED_FARMS, ONE_CREW_SHORT -> {
                storms.add(storm(random.nextDouble(40, 75), random));
                storms.add(storm(random.nextDouble(125, 170), random));
            }
        }
        return storms;
    }

    private static Storm storm(double hour, SplittableRandom random) {
        return new Storm(
                hour,
                random.nextDouble(3, 9),
                random.nextDouble(0.55, 0.9),
                random.nextDouble(10, 30));
    }
}
