package rainward.feed.reading;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What was missing, filled or left out of an answer, one sentence a layer, for the user. */
public final class Notes {

    private final List<String> sentences = new ArrayList<>();
    private final Map<String, Count> leftOut = new LinkedHashMap<>();
    private final String one;
    private final String many;

    /** About intervals. */
    public Notes() {
        this("interval", "intervals");
    }

    /** About things of another name. */
    public Notes(String one, String many) {
        this.one = one;
        this.many = many;
    }

    /** About entries of a list. */
    public static Notes ofEntries() {
        return new Notes("entry", "entries");
    }

    /** How many intervals of a layer, and why the first. */
    private record Count(int intervals, String first) {}

    public void say(String sentence) {
        if (!sentences.contains(sentence)) {
            sentences.add(sentence);
        }
    }

    /** Notes that one interval or value of a layer is left out. */
    public void leftOut(String layer, String why) {
        leftOut.merge(layer, new Count(1, why), (a, b) -> new Count(a.intervals() + 1, a.first()));
    }

    public List<String> all() {
        List<String> all = new ArrayList<>(sentences);
        leftOut.forEach((layer, count) -> all.add(layer + ": " + count.intervals()
                + " " + (count.intervals() == 1 ? one : many)
                + " left out, the first because " + count.first()));
        return all;
    }
}
