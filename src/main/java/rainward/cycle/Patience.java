package rainward.cycle;

import java.time.Duration;
import java.time.LocalDate;
import rainward.farm.Crew;
import rainward.farm.Machine;
import rainward.farm.Operation;
import rainward.farm.Season;
import rainward.queue.problem.Job;

/**
 * What a field is worth whose seed is kept for days after those planned: a soaking rain comes
 * sooner or later, is seen coming or not, finds the crew with time for the field or not, and makes
 * the stand or not. The stand model has no say in it: every figure is from memory or chosen.
 */
final class Patience {

    /** From the rain that makes it to the day a stand comes up; common practice, no source [d]. */
    private static final int UP_DAYS = 7;

    /** Nobody sees every rain coming; chosen by us, no source. */
    private static final double SEEN = 0.7;

    /** Mean time between rains of 10 mm in a Midwest summer, from memory [d]. */
    private static final double SOAKING_RAIN_EVERY_DAYS = 9;

    private static final double DAILY_CHANCE = -Math.expm1(-1 / SOAKING_RAIN_EVERY_DAYS);

    /** That it is seen, and that seed put in for it makes a stand; chosen by us, no source. */
    private static final double COMES_UP = 0.7 * SEEN;

    /** Days of seeding that one rain is good for, ahead of it and after; chosen by us [d]. */
    private static final double DAYS_A_RAIN = 4;

    /** Of a seeder's shift, the rest goes to roads, filling and waits; chosen by us. */
    private static final double SEEDING_SHARE = 0.5;

    /** A field that is not ready when the rain is in sight misses some; chosen by us. */
    private static final double MISSED_RAW = 0.05;

    private final double roomHaPerRain;
    private final double waitingHa;

    /**
     * What is assumed.
     *
     * @param crew that seeds
     * @param waitingHa ground that waits for seed [ha]
     */
    Patience(Crew crew, double waitingHa) {
        this.roomHaPerRain = DAYS_A_RAIN * haPerDay(crew);
        this.waitingHa = waitingHa;
    }

    private static double haPerDay(Crew crew) {
        double shiftH =
                Duration.between(crew.hours().start(), crew.hours().end()).toMinutes() / 60.0;
        return crew.machines().stream()
                        .filter(m -> m.operations().contains(Operation.SEED))
                        .map(Machine::work)
                        .mapToDouble(Machine.WorkPace::workRateHaPerH)
                        .sum()
                * shiftH
                * SEEDING_SHARE;
    }

    /**
     * Expected worth of seed kept from a day on: sum over the days to come of the chance that the
     * first soaking rain falls on it, times what a stand up a week later is worth; less where more
     * ground waits than the crew can seed with the rains to come.
     *
     * @param season of the mix
     * @param day from which on it may be sown
     * @param share what its worth is multiplied with
     */
    Job.Kept kept(Season season, LocalDate day, double share) {
        double none = 1;
        double sum = 0;
        double rains = 0;
        LocalDate first = season.firstSowing().atYear(day.getYear());
        for (LocalDate d = day.isBefore(first) ? first : day;
                season.allowsSowing(d);
                d = d.plusDays(1)) {
            sum += none * DAILY_CHANCE * COMES_UP * season.worthOn(d.plusDays(UP_DAYS)) * share;
            none *= 1 - DAILY_CHANCE;
            rains += DAILY_CHANCE;
        }
        double room = Math.min(1, rains * roomHaPerRain / Math.max(waitingHa, 1e-9));
        return new Job.Kept(sum * room, sum * room * (1 - MISSED_RAW));
    }
}
