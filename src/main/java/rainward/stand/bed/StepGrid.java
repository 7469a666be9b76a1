package rainward.stand.bed;

import rainward.farm.Require;
import rainward.stand.StandCase;

/**
 * Steps of a few hours over the traces; hours left over at the end belong to no step.
 *
 * @param stepHours length of a step [h]
 * @param steps how many fit into the traces
 * @param firstStep the step that holds the first seeding hour
 * @param seedingSteps how many hold a seeding hour
 */
public record StepGrid(int stepHours, int steps, int firstStep, int seedingSteps) {

    public static StepGrid of(StandCase question, int stepHours) {
        Require.that(
                question.later().isEmpty() || question.traces().hours() % stepHours == 0,
                "steps of " + stepHours + " h do not fit into the traces");
        int steps = question.allHours() / stepHours;
        int first = question.firstHour() / stepHours;
        int last = (question.firstHour() + question.hours().count() - 1) / stepHours;
        return new StepGrid(stepHours, steps, first, Math.min(last, steps - 1) - first + 1);
    }

    /** Seeding step of the hour {@code hour} of the traces, counted from the first. */
    public int seedingStep(int hour) {
        return Math.min(hour / stepHours - firstStep, seedingSteps - 1);
    }

    /** First hour of a step. */
    public int hour(int step) {
        return step * stepHours;
    }

    public double days() {
        return stepHours / 24.0;
    }

    /** Steps that hold so many hours, the last one counted whole. */
    public int covering(int hours) {
        return (hours + stepHours - 1) / stepHours;
    }
}
