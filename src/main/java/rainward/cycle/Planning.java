package rainward.cycle;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import rainward.queue.problem.Fillings;
import rainward.queue.problem.InBoxes;
import rainward.queue.problem.Job;
import rainward.queue.problem.PlanProblem;
import rainward.queue.problem.Standing;
import rainward.stand.StandOutlook;

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
        Patience patience = new Patience(
                input.roster().crew(),
                reckoned.stream().mapToDouble(f -> f.item().field().areaHa()).sum());
        return new PlanProblem(
                input.asOf(),
                input.planHorizon(),
                input.roster().crew(),
                reckoned.stream().map(field -> job(field, patience)).toList(),
                input.rules().prices(),
                input.memory().lastOrder(),
                Map.of(),
                Standing.recorded(
                        input.fields(), input.roster(), input.memory().lastOrder(), input.asOf()),
                InBoxes.recorded(
                        input.fields(), input.roster(), input.memory().lastOrder(), input.asOf()));
    }

    private Job job(FieldReckoning field, Patience patience) {
        List<StandOutlook> stands = field.stands();
        List<Job.MixOption> options = IntStream.range(0, stands.size())
                .filter(wish -> inStock(stands.get(wish)))
                .mapToObj(wish -> option(field, wish))
                .toList();
        return new Job(
                field.item(),
                field.recipe(),
                input.roster().arrivalAt(field.item().field()),
                options,
                field.stopped().stopped(),
                field.stopped().firmedByRain(),
                input.rules().patient() ? kept(stands, patience) : Job.Kept.NOTHING,
                input.fillings().getOrDefault(field.item().field().name(), Fillings.NONE));
    }

    private boolean inStock(StandOutlook stand) {
        return !input.memory().outOfStock().contains(stand.mix());
    }

    /**
     * A mix takes the place of one that is wished for more only where it brings clearly more.
     *
     * @param wish place in the order of wish, from 0
     */
    private static Job.MixOption option(FieldReckoning field, int wish) {
        StandOutlook stand = field.stands().get(wish);
        double[] worth = SureGain.of(stand.worth(), field.soil().traces());
        return new Job.MixOption(
                stand.mix(),
                stand.chance(),
                Arrays.stream(worth).map(w -> w * share(wish)).toArray());
    }

    private static double share(int wish) {
        return Math.pow(SECOND_WISH_SHARE, wish);
    }

    /** What the best of the mixes may still bring after the days planned. */
    private Job.Kept kept(List<StandOutlook> stands, Patience patience) {
        LocalDate next = LocalDate.ofInstant(input.planHorizon().to(), input.zone());
        return IntStream.range(0, stands.size())
                .filter(wish -> inStock(stands.get(wish)))
                .mapToObj(wish -> Optional.ofNullable(
                                input.roster().mixes().get(stands.get(wish).mix()))
                        .map(mix -> patience.kept(mix.season(), next, share(wish)))
                        .orElse(Job.Kept.NOTHING))
                .max(Comparator.comparingDouble(Job.Kept::readyWorth))
                .orElse(Job.Kept.NOTHING);
    }
}
