package rainward.stand.tally;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import rainward.farm.Season;
import rainward.stand.StandCase;
import rainward.stand.StandRules;
import rainward.stand.bed.StepGrid;

/** What each hour is worth, when the stand is judged, and what may still come after the traces. */
public final class StandCalendar {
    /** What is under way at the end of the traces takes so much longer on average [d]. */
    private static final double UNDER_WAY_DAYS = 2;

    /** From a soaking rain to seedlings in warm soil [d]; common practice, no source. */
    private static final double RAIN_TO_SEEDLINGS_DAYS = 4;

    private final StandCase question;
    private final StandRules.Beyond beyond;
    private final StepGrid grid;
    private final Instant judgedAt;
    private final double spareDays;
    private final boolean[] sowable;

    public StandCalendar(StandCase question, StandRules.Beyond beyond, StepGrid grid) {
        this.question = question;
        this.beyond = beyond;
        this.grid = grid;
        judgedAt = judgedAt();
        sowable = findSowable();
        Instant end = question.traces().timeOf(question.traces().hours());
        spareDays = Duration.between(end, judgedAt).toHours() / 24.0;
    }

    private Instant judgedAt() {
        Instant start = question.hours().start();
        Instant check = start.plus(Duration.ofMinutes(Math.round(beyond.checkDays() * 1440)));
        Instant seasonEnd = season().lastEmergence()
                .atYear(dateOf(start).getYear())
                .plusDays(1)
                .atStartOfDay(question.hours().zone())
                .toInstant();
        return check.isBefore(seasonEnd) ? check : seasonEnd;
    }

    /** Worth of a seedling by step of emergence; -1 where it comes too late to count. */
    public double[] worthByStep() {
        double[] worth = new double[grid.steps()];
        for (int step = 0; step < worth.length; step++) {
            worth[step] = worthAt(question.traces().timeOf(grid.hour(step)));
        }
        return worth;
    }

    /** True where seed may go in, by seeding hour. */
    public boolean[] sowable() {
        return sowable.clone();
    }

    /** True where seed may go in at one hour at least. */
    public boolean anySowable() {
        for (boolean hour : sowable) {
            if (hour) {
                return true;
            }
        }
        return false;
    }

    private boolean[] findSowable() {
        boolean[] found = new boolean[question.hours().count()];
        int first = question.firstHour();
        for (int s = 0; s < found.length; s++) {
            found[s] = season().allowsSowing(dateOf(question.traces().timeOf(first + s)));
        }
        return found;
    }

    /** What is under way in moist soil when the traces end. */
    public Later underWay() {
        double chance = spareDays > UNDER_WAY_DAYS ? beyond.underWayFraction() : 0;
        return later(chance, UNDER_WAY_DAYS);
    }

    /** What waits in dry soil when the traces end: {@code c (1 - exp(-spare / mean interval))}. */
    public Later waiting() {
        double rainDays = Math.max(0, spareDays - RAIN_TO_SEEDLINGS_DAYS);
        double rain = 1 - Math.exp(-rainDays / beyond.soakingRainEveryDays());
        return later(beyond.comesUpFraction() * rain, rainDays / 2 + RAIN_TO_SEEDLINGS_DAYS);
    }

    private Later later(double chance, double days) {
        int step = grid.steps() + (int) Math.round(days / grid.days());
        double worth = Math.max(0, worthAt(question.traces().timeOf(grid.hour(step))));
        return new Later(worth > 0 ? chance : 0, worth, step);
    }

    private double worthAt(Instant instant) {
        return instant.isBefore(judgedAt) ? season().worthOn(dateOf(instant)) : -1;
    }

    private Season season() {
        return question.mix().season();
    }

    private LocalDate dateOf(Instant instant) {
        return instant.atZone(question.hours().zone()).toLocalDate();
    }

    /**
     * Seed that is alive when the traces end.
     *
     * @param chance that it still makes the stand, 0 to 1
     * @param worth of the stand then, 0 to the mix's full worth
     * @param step of emergence, counted from the start of the traces
     */
    public record Later(double chance, double worth, int step) {}
}
