package rainward.readiness;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import rainward.stand.StandCase;
import rainward.stand.model.StandModel;

/**
 * How ready a field is. The score is {@code 100 x chance x (worth / best worth)} at the field's
 * next possible hour: the chance of a stand, marked down where a later hour would bring more. Gates
 * that leave nothing to seed give zero.
 */
public final class ReadinessModel {
    private final ReadinessRules rules;

    public ReadinessModel(ReadinessRules rules) {
        this.rules = rules;
    }

    /** The model with the program's own rules. */
    public static ReadinessModel usual() {
        return new ReadinessModel(ReadinessRules.DEFAULT);
    }

    /** Score, parts, gates and reason of one field. */
    public Readiness of(ReadinessCase question) {
        Gates gates = new Gates(question, rules);
        Optional<Readiness.Gate> shut = gates.shut();
        if (shut.isPresent()) {
            return nothing(question, List.of(shut.get()));
        }
        return Prospect.of(question, gates.sowable(), rules.workableShare())
                .map(prospect -> told(question, prospect, gates.open()))
                .orElseGet(() -> noHour(question, gates));
    }

    private Readiness told(ReadinessCase question, Prospect prospect, List<Readiness.Gate> gates) {
        ReadinessCase.Ahead ahead = question.ahead().orElseThrow();
        int hour = ahead.traces().hourOf(prospect.timeOf(prospect.nextHour()));
        Figures figures = figures(prospect, RainAhead.of(ahead.traces(), hour, rules), hour);
        Readiness.Parts parts = PartScores.of(prospect, figures.rain(), ahead, hour);
        boolean wait = prospect.shareOfBest() < rules.waitBelowShare();
        return new Readiness(
                question.item().field().name(),
                (int) Math.round(100 * prospect.chance() * prospect.shareOfBest()),
                new Readiness.Chances(
                        prospect.mix().name(),
                        prospect.chance(),
                        prospect.bestChance(),
                        Optional.of(prospect.timeOf(prospect.bestHour()))),
                parts,
                gates,
                new ReasonLine(question, prospect, figures, parts).words(wait),
                Optional.of(figures));
    }

    private static Figures figures(Prospect prospect, Figures.Rain rain, int hour) {
        StandCase question = prospect.option().question();
        Instant seeding = prospect.timeOf(prospect.nextHour());
        return new Figures(
                seeding,
                rain,
                PartScores.seedbed(question.soil(), hour),
                new Figures.Stand(
                        prospect.option().outlook(), prospect.nextHour(), prospect.bestHour()),
                new Sensitivities(StandModel.usual()).of(question, seeding));
    }

    private static Readiness noHour(ReadinessCase question, Gates gates) {
        List<Readiness.Gate> open = gates.open();
        return nothing(
                question,
                open.isEmpty()
                        ? List.of(new Readiness.Gate(
                                Readiness.Gate.Kind.NOT_WORKABLE,
                                "no workable hour in the days ahead"))
                        : open);
    }

    private static Readiness nothing(ReadinessCase question, List<Readiness.Gate> gates) {
        String words = gates.get(0).words();
        String mix = question.ahead().stream()
                .flatMap(ahead -> ahead.options().stream())
                .map(option -> option.mix().name())
                .findFirst()
                .orElse(question.item().field().wish().mixes().get(0));
        return new Readiness(
                question.item().field().name(),
                0,
                new Readiness.Chances(mix, 0, 0, Optional.empty()),
                new Readiness.Parts(0, 0, 0),
                gates,
                new Readiness.Why("", words),
                Optional.empty());
    }
}
