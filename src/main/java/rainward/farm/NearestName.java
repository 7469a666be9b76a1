package rainward.farm;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** The known name that somebody most likely meant when writing an unknown one. */
public final class NearestName {

    private NearestName() {}

    /**
     * The nearest of the known names by letters put in, left out or changed (Levenshtein 1966),
     * capitals apart; empty where more than half of the letters would have to change.
     */
    public static Optional<String> of(String written, Collection<String> known) {
        return known.stream()
                .min(Comparator.<String>comparingInt(name -> distance(written, name))
                        .thenComparing(Comparator.naturalOrder()))
                .filter(name -> distance(written, name) <= (Math.max(written.length(), 2)) / 2);
    }

    private static int distance(String one, String other) {
        String a = one.toLowerCase(Locale.ROOT);
        String b = other.toLowerCase(Locale.ROOT);
        int[] above = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            above[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int[] row = new int[b.length() + 1];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int changed = above[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(changed, Math.min(above[j], row[j - 1]) + 1);
            }
            above = row;
        }
        return above[b.length()];
    }
}
