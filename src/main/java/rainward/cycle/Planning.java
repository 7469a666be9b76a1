package rainward.cycle;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import rainward.farm.Property;
import rainward.farm.Season;
import rainward.queue.problem.Job;
import rainward.queue.problem.PlanProblem;
import rainward.stand.StandOutlook;
import rainward.stand.StandRules;

/**
 * What is to be planned, out of what was reckoned.
 *
 * @param input of the round
 */
record Planning(CycleInput input) {

    /** What a stand of the next mix is worth to somebody who wished for the one before; chosen. */
    private static final double SECOND_WISH_SHARE = 0.9;

    /** The planner's question. */
    PlanProblem problem(List<FieldReckoning> reckoned) {
        return new PlanProblem(
                input.asOf(),
                input.planHorizon(),
                input.roster().crew(),
                reckoned.stream().map(this::job).toList(),
                input.rules().prices(),
                input.memory().lastOrder());
    }

    private Job job(FieldReckoning field) {
        Property property = input.roster().properties().get(field.item().field().property());
        List<StandOutlook> stands = field.stands();
        List<Job.MixOption> options = IntStream.range(0, stands.size())
                .filter(wish ->
                        !input.memory().outOfStock().contains(stands.get(wish).mix()))
                .mapToObj(wish -> option(stands.get(wish), wish))
                .toList();
        return new Job(
                field.item(),
                field.recipe(),
                property == null ? field.item().field().place() : property.place(),
                options,
                field.stopped().stopped(),
                field.stopped().firmedByRain());
    }

    /**
     * A mix takes the place of one that is wished for more only where it brings clearly more.
     *
     * @param wish place in the order of wish, from 0
     */
    private Job.MixOption option(StandOutlook stand, int wish) {
        double share = Math.pow(SECOND_WISH_SHARE, wish);
        double[] worth = input.rules().patient() ? gains(stand) : stand.worth();
        return new Job.MixOption(
                stand.mix(),
                stand.chance(),
                Arrays.stream(worth).map(w -> w * share).toArray());
    }

    /** What seeding gains over waiting, by seeding hour. */
    private double[] gains(StandOutlook stand) {
        Patience patience = new Patience(StandRules.DEFAULT.beyond());
        Season season = Optional.ofNullable(input.roster().mixes().get(stand.mix()))
                .orElseThrow()
                .season();
        double[] gains = stand.worth().clone();
        LocalDate day = LocalDate.MIN;
        double waiting = 0;
        for (int h = 0; h < gains.length; h++) {
            LocalDate today =
                    LocalDate.ofInstant(stand.start().plusSeconds(3600L * h), input.zone());
            waiting = today.equals(day) ? waiting : patience.worth(season, today);
            day = today;
            gains[h] = patience.gain(gains[h], waiting);
        }
        return gains;
    }
}
