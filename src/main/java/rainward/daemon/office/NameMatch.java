package rainward.daemon.office;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rainward.daemon.settings.Spelled;
import rainward.farm.NearestName;

/**
 * Which of many names a person means by a text.
 *
 * @param text as typed
 * @param all names there are
 * @param meant those it can mean
 */
public record NameMatch(String text, List<String> all, List<String> meant) {

    /** The whole name wins; else every name that begins with the text, whatever the case. */
    public static NameMatch of(String text, List<String> all) {
        String typed = text.strip().toLowerCase(Locale.ROOT);
        List<String> same = all.stream()
                .filter(name -> name.toLowerCase(Locale.ROOT).equals(typed))
                .toList();
        List<String> begin = all.stream()
                .filter(name -> name.toLowerCase(Locale.ROOT).startsWith(typed))
                .toList();
        return new NameMatch(text, all, same.isEmpty() && !typed.isEmpty() ? begin : same);
    }

    /**
     * The value that a person means by a word of ours, such as {@code soil-tests}.
     *
     * @param what for instance {@code cause}
     * @throws Refusal that says every word there is
     */
    public static <E extends Enum<E>> E among(E[] all, String text, String what) {
        List<String> words = Arrays.stream(all).map(Spelled::dashed).toList();
        String meant = of(text, words)
                .unique()
                .orElseThrow(() -> Refusal.badInput("'" + text + "' is no " + what
                        + ": write one of " + String.join(", ", words) + "."));
        return all[words.indexOf(meant)];
    }

    public Optional<String> unique() {
        return meant.size() == 1 ? Optional.of(meant.get(0)) : Optional.empty();
    }

    /**
     * The one name that is meant.
     *
     * @param what for instance {@code field}
     * @throws Refusal that says what would be right
     */
    public String orRefuse(String what) {
        return unique().orElseThrow(() -> Refusal.badInput(words(what)));
    }

    private String words(String what) {
        if (all.isEmpty()) {
            return "There is no " + what + " yet: import some with `rainward import FILE`.";
        }
        if (meant.size() > 1) {
            return what + " '" + text + "' can be any of " + meant + ": type more of the name.";
        }
        String nearest = NearestName.of(text, all)
                .map(n -> "; did you mean '" + n + "'?")
                .orElse(".");
        return "There is no " + what + " '" + text + "'" + nearest;
    }
}
