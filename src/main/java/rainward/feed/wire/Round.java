package rainward.feed.wire;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import rainward.weather.source.RawPull;

/** One pull in progress: its moment, what came over the wire and what is to be said about it. */
public final class Round {

    private final Instant asOf;
    private final List<RawPull> answers = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();
    private Duration waited = Duration.ZERO;

    public Round(Instant asOf) {
        this.asOf = asOf;
    }

    /** Now: the moment of the pull and the waits since. */
    public Instant now() {
        return asOf.plus(waited);
    }

    public Instant asOf() {
        return asOf;
    }

    Duration waited() {
        return waited;
    }

    void waited(Duration more) {
        waited = waited.plus(more);
    }

    void received(RawPull answer) {
        answers.add(answer);
    }

    /** Puts the time of issue on the last answer. */
    public void issued(Instant at) {
        if (!answers.isEmpty()) {
            answers.set(answers.size() - 1, answers.get(answers.size() - 1).issued(at));
        }
    }

    public void note(String words) {
        if (!notes.contains(words)) {
            notes.add(words);
        }
    }

    public List<RawPull> answers() {
        return List.copyOf(answers);
    }

    public List<String> notes() {
        return List.copyOf(notes);
    }
}
