package rainward.stand.tally;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import rainward.farm.Season;
import rainward.stand.StandCase;
import rainward.stand.bed.StepGrid;

/** What each hour is worth, when the stand is judged, and what is still under way at the end. */
public final class StandCalendar {
    /** What is under way at the end takes so much longer on average, chosen here [d]. */
    private static final double UNDER_WAY_DAYS = 2;

    private final StandCase question;
    private final double checkDays;
    private final StepGrid grid;
    private final Instant judgedAt;
    private final double spareDays;
    private final boolean[] sowable;

    public StandCalendar(StandCase question, double checkDays, StepGrid grid) {
        this.question = question;
        this.checkDays = checkDays;
        this.grid = grid;
        judgedAt = judgedAt();
        sowable = findSowable();
        Instant end = question.traces().timeOf(question.allHours());
        spareDays = Duration.between(end, judgedAt).toHours() / 24.0;
    }

    private Instant judgedAt() {
        Instant start = question.hours().start();
        Instant check = start.plus(Duration.ofMinutes(Math.round(checkDays * 1440)));
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

    /**
     * What is under way in moist soil at the end. Where the weather ends before the judging, as it
     * does in looking back, it is taken to come up; where all days up to the judging were reckoned
     * it has come too late.
     */
    public UnderWay underWay() {
        int step = grid.steps() + (int) Math.round(UNDER_WAY_DAYS / grid.days());
        double worth = Math.max(0, worthAt(question.traces().timeOf(grid.hour(step))));
        return new UnderWay(spareDays > UNDER_WAY_DAYS && worth > 0, worth, step);
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
     * Seed that is under way at the end.
     *
     * @param counts true where it is taken to make the stand
     * @param worth of the stand then, 0 to the mix's full worth
     * @param step of emergence, counted from the start of the traces
     */
    public record UnderWay(boolean counts, double worth, int step) {}
}
