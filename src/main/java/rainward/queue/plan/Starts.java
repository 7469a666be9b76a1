package rainward.queue.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import rainward.queue.problem.Job;
import rainward.queue.problem.OpenStages;
import rainward.queue.problem.PlanProblem;
import rainward.queue.search.Genome;
import rainward.queue.shop.Decoder;

/** Orders that a search may start from: the last order, the most worth first, as listed. */
final class Starts {

    private final PlanProblem problem;
    private final Decoder decoder;

    private Starts(PlanProblem problem, Decoder decoder) {
        this.problem = problem;
        this.decoder = decoder;
    }

    static List<Genome> of(PlanProblem problem, Decoder decoder) {
        Starts starts = new Starts(problem, decoder);
        List<Genome> all = new ArrayList<>();
        problem.lastOrder().ifPresent(o -> all.addAll(LastOrder.of(problem, o, decoder)));
        all.add(starts.by(Comparator.comparingDouble(j -> -worthNow(j))));
        all.add(starts.by(Comparator.comparing(Job::name)));
        return all;
    }

    private Genome by(Comparator<Job> order) {
        int[] items = java.util.stream.IntStream.range(0, problem.jobs().size())
                .boxed()
                .sorted(Comparator.comparing(
                                (Integer i) -> !job(i).field().status().pinnedFirst())
                        .thenComparing((a, b) -> order.compare(job(a), job(b)))
                        .thenComparing(i -> i))
                .mapToInt(i -> i)
                .toArray();
        return new Genome(decoder.parts().row(items), new int[decoder.genes()]);
    }

    private Job job(int index) {
        return problem.jobs().get(index);
    }

    /** Worth x weight a hectare-hour of work at the first hours it may be sown. */
    private static double worthNow(Job job) {
        double best = job.options().stream()
                .flatMapToDouble(o -> java.util.Arrays.stream(o.worth()))
                .max()
                .orElse(0);
        double open = OpenStages.of(job).toDo().size();
        return job.field().field().wish().priority() * best / open;
    }
}
