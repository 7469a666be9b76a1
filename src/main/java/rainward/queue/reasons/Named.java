package rainward.queue.reasons;

import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;

/**
 * Which of some names a person means. The whole name wins; else names that begin with what was
 * typed; else names with a word that begins so. Case is of no matter.
 *
 * @param typed by the person
 * @param all names there are
 * @param meant those it can mean
 */
record Named(String typed, List<String> all, List<String> meant) {

    static Named of(String typed, List<String> all) {
        String text = typed.strip().toLowerCase(Locale.ROOT);
        List<String> meant = which(all, text::equals);
        if (meant.isEmpty()) {
            meant = which(all, name -> name.startsWith(text));
        }
        if (meant.isEmpty()) {
            meant = which(all, name -> (" " + name).contains(" " + text));
        }
        return new Named(typed.strip(), all, text.isEmpty() ? List.of() : meant);
    }

    private static List<String> which(List<String> all, Predicate<String> means) {
        return all.stream()
                .filter(name -> means.test(name.toLowerCase(Locale.ROOT)))
                .toList();
    }

    boolean unique() {
        return meant.size() == 1;
    }

    /** The one name that is meant. */
    String name() {
        return meant.get(0);
    }

    /**
     * What is wrong, and what would be right.
     *
     * @param what for instance {@code machine}
     */
    String fault(String what) {
        if (meant.size() > 1) {
            return what + " '" + typed + "' can be any of " + String.join(", ", meant)
                    + ": type more of the name";
        }
        return "no " + what + " is called '" + typed + "'; there "
                + (all.isEmpty() ? "is none" : "are " + String.join(", ", all));
    }
}
