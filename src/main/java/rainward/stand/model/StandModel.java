package rainward.stand.model;

import java.util.List;
import rainward.stand.StandCase;
import rainward.stand.StandOutlook;
import rainward.stand.StandRules;
import rainward.stand.bed.StepGrid;
import rainward.stand.bed.SurfaceDamage;
import rainward.stand.bed.TraceColumns;
import rainward.stand.tally.StandCalendar;
import rainward.stand.tally.StandTally;

/**
 * Chance of a stand by seeding hour, over all traces. Seed of each kind germinates by hydrothermal
 * time, class by class of the seed lot; what has germinated runs its root against the drying front
 * and its shoot to the surface; hard rain and heat take their part; seed goes on through what comes
 * after the traces up to the day on which the stand is judged.
 */
public final class StandModel {
    private final StandRules rules;

    public StandModel(StandRules rules) {
        this.rules = rules;
    }

    /** The model with the program's own rules. */
    public static StandModel usual() {
        return new StandModel(StandRules.DEFAULT);
    }

    /** What is shorter than this has no answer [h]. */
    public int stepHours() {
        return rules.grain().stepHours();
    }

    /** Answers for every seeding hour of the question. */
    public StandOutlook outlook(StandCase question) {
        StepGrid grid = StepGrid.of(question, stepHours());
        StandCalendar calendar = new StandCalendar(question, rules.checkDays(), grid);
        if (!calendar.anySowable()) {
            return StandOutlook.never(question.mix().name(), question.hours());
        }
        StandTally tally = new StandTally(question, calendar, grid);
        sow(question, grid, calendar.worthByStep(), tally);
        return tally.outlook(calendar.sowable());
    }

    private void sow(StandCase question, StepGrid grid, double[] worthByStep, StandTally tally) {
        double depthCm = question.soil().seedZone().depthCm();
        SurfaceDamage damage = new SurfaceDamage(question.conditions(), depthCm, rules.damage());
        TraceColumns columns = new TraceColumns(question, damage, grid);
        List<ComponentRun> seeds = question.mix().components().stream()
                .map(component -> new ComponentRun(question, component, rules, grid))
                .toList();
        for (int first = 0; first < question.soil().traces(); first += TraceColumns.WIDTH) {
            int count = columns.load(first);
            for (int i = 0; i < count; i++) {
                for (ComponentRun seed : seeds) {
                    seed.run(columns.column(i), worthByStep, tally);
                }
                tally.judge();
            }
        }
    }
}
