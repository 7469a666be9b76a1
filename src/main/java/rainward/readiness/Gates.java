package rainward.readiness;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rainward.farm.FieldStatus;
import rainward.readiness.Readiness.Gate;

/** What stops a field, in the order in which the person would ask. */
final class Gates {
    private final ReadinessCase question;
    private final ReadinessRules rules;

    Gates(ReadinessCase question, ReadinessRules rules) {
        this.question = question;
        this.rules = rules;
    }

    /** Gates that leave nothing to reckon: at the first of them the answer is given. */
    Optional<Gate> shut() {
        FieldStatus status = question.item().status();
        Instant asOf = question.teller().asOf();
        if (!status.waiting()) {
            return gate(Gate.Kind.NOT_WAITING, "not waiting for seed: " + words(status));
        }
        Optional<Instant> held = status.heldAt(asOf);
        if (held.isPresent()) {
            return gate(Gate.Kind.HELD, "held until " + question.teller().when(held.get()));
        }
        if (question.ahead().isEmpty()) {
            return gate(Gate.Kind.NO_FORECAST, "no forecast for this farm yet");
        }
        if (inSeason().isEmpty()) {
            return gate(Gate.Kind.OUT_OF_SEASON, "no mix of this field may be sown now");
        }
        if (sowable().isEmpty()) {
            return gate(Gate.Kind.NO_SEED, "the shed has no seed of " + names(inSeason()));
        }
        return Optional.empty();
    }

    /** Gates that hold the field back while its chances are told. */
    List<Gate> open() {
        List<Gate> gates = new ArrayList<>();
        List<String> stages = question.work().openStages();
        if (!stages.isEmpty()) {
            gates.add(new Gate(
                    Gate.Kind.STAGES_NOT_DONE, "still to do: " + String.join(", ", stages)));
        }
        ReadinessCase.Ahead ahead = question.ahead().orElseThrow();
        int now = ahead.traces().hourOf(question.teller().asOf());
        if (now >= 0
                && now < ahead.soil().hours()
                && !Prospect.workable(ahead.soil(), now, rules.workableShare())) {
            gates.add(new Gate(Gate.Kind.NOT_WORKABLE, "too wet to work"));
        }
        Duration age =
                Duration.between(ahead.stamp().issuedAt(), question.teller().asOf());
        if (age.compareTo(rules.tooOld()) > 0) {
            gates.add(new Gate(
                    Gate.Kind.FORECAST_TOO_OLD, "the forecast is " + age.toHours() + " hours old"));
        }
        return gates;
    }

    /** Mixes in season in at least one hour ahead and in the shed. */
    List<ReadinessCase.Option> sowable() {
        return inSeason().stream()
                .filter(option -> !question.outOfStock().contains(option.mix().name()))
                .toList();
    }

    private List<ReadinessCase.Option> inSeason() {
        return question.ahead().stream()
                .flatMap(ahead -> ahead.options().stream())
                .filter(this::seasonAhead)
                .toList();
    }

    private boolean seasonAhead(ReadinessCase.Option option) {
        Instant start = option.outlook().start();
        int days = option.outlook().seedingHours() / 24;
        for (int day = 0; day <= days; day++) {
            var date = start.plus(Duration.ofDays(day))
                    .atZone(question.teller().zone())
                    .toLocalDate();
            if (option.mix().season().allowsSowing(date)) {
                return true;
            }
        }
        return false;
    }

    private static String words(FieldStatus status) {
        return switch (status.state()) {
            case SEEDED -> "seed is in";
            case UP -> "it is up";
            case DROPPED -> "taken out of the queue";
            default -> status.state().name();
        };
    }

    private static String names(List<ReadinessCase.Option> options) {
        return String.join(" or ", options.stream().map(o -> o.mix().name()).toList());
    }

    private static Optional<Gate> gate(Gate.Kind kind, String words) {
        return Optional.of(new Gate(kind, words));
    }
}
