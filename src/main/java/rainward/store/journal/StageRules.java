package rainward.store.journal;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rainward.farm.FieldStatus;
import rainward.farm.NearestName;
import rainward.farm.Recipe;
import rainward.farm.Stage;
import rainward.farm.StageRecord;

/**
 * What may be said about the stages of a field that stands so.
 *
 * @param recipe of the field
 * @param status where it stands
 */
record StageRules(Recipe recipe, FieldStatus status) {

    /** Clocks of a crew's telephones differ by less. */
    private static final long CLOCK_SKEW_S = 300;

    /** Why a word cannot be taken, if it cannot. */
    Optional<String> against(StageWord word) {
        return unknown(word).or(() -> inFuture(word)).or(() -> outOfOrder(word));
    }

    private Optional<String> unknown(StageWord word) {
        List<String> known = recipe.stages().stream().map(Stage::name).toList();
        return Stream.concat(
                        Stream.of(word.stage()),
                        word.means().passingOver().stream().sorted())
                .filter(name -> !known.contains(name))
                .findFirst()
                .map(name -> word.field() + ": its recipe \"" + recipe.name() + "\" has no stage \""
                        + name + "\"; "
                        + NearestName.of(name, known)
                                .map(near -> "\"" + near + "\" is the nearest of ")
                                .orElse("it has ")
                        + String.join(", ", known) + ".");
    }

    private static Optional<String> inFuture(StageWord word) {
        Instant latest = word.said().now().plusSeconds(CLOCK_SKEW_S);
        return word.said().at().isAfter(latest)
                ? Optional.of(word.field() + ": " + word.stage() + " cannot have happened at "
                        + moment(word.said().at(), word) + ", which is still to come.")
                : Optional.empty();
    }

    private Optional<String> outOfOrder(StageWord word) {
        return stillOpen(word).or(() -> beforeEarlier(word)).or(() -> beforeItsStart(word));
    }

    private Optional<String> stillOpen(StageWord word) {
        List<String> open = earlier(word).stream()
                .filter(name -> !word.means().passingOver().contains(name))
                .filter(name -> status.of(name).filter(StageRecord::done).isEmpty())
                .toList();
        return open.isEmpty()
                ? Optional.empty()
                : Optional.of(word.field() + ": " + word.stage() + " comes after "
                        + String.join(" and ", open) + ", not done yet; record "
                        + (open.size() == 1 ? "it" : "them")
                        + " first, or name what is left out on purpose: "
                        + open.stream()
                                .map(name -> "--without \"" + name + "\"")
                                .collect(Collectors.joining(" "))
                        + ".");
    }

    private Optional<String> beforeEarlier(StageWord word) {
        return earlier(word).stream()
                .flatMap(name -> status.of(name).stream())
                .filter(done -> done.finishedAt()
                        .filter(end -> end.isAfter(word.said().at()))
                        .isPresent())
                .findFirst()
                .map(done -> word.field() + ": " + word.stage() + " at "
                        + moment(word.said().at(), word) + " would come before "
                        + done.stage() + ", done at "
                        + moment(done.finishedAt().orElseThrow(), word)
                        + "; give a later time, or undo " + done.stage() + " first.");
    }

    private Optional<String> beforeItsStart(StageWord word) {
        return status.of(word.stage())
                .flatMap(StageRecord::startedAt)
                .filter(began -> began.isAfter(word.said().at()))
                .map(began -> word.field() + ": " + word.stage() + " cannot end at "
                        + moment(word.said().at(), word) + ", it was started at "
                        + moment(began, word) + "; give a later time, or undo the start first.");
    }

    /** Stages of the recipe before the one in hand, by name. */
    List<String> earlier(StageWord word) {
        return recipe.stages().stream()
                .map(Stage::name)
                .takeWhile(name -> !name.equals(word.stage()))
                .toList();
    }

    /** Stages of the recipe after the one in hand that were begun or done, by name. */
    List<String> laterBegun(String stage) {
        return recipe.stages().stream()
                .map(Stage::name)
                .dropWhile(name -> !name.equals(stage))
                .skip(1)
                .filter(name -> status.of(name).isPresent())
                .toList();
    }

    Stage stage(String name) {
        return recipe.stages().stream()
                .filter(s -> s.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    static String moment(Instant instant, StageWord word) {
        return word.said().clock().near(instant, word.said().now());
    }
}
