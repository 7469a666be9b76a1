package rainward.replay.crew;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** The order as the crew was last told it, and how often its top was turned over. */
final class GivenOrder {

    /** The crew has so many fields in mind. */
    private static final int IN_MIND = 6;

    private List<String> last = List.of();
    private int changes;

    int changes() {
        return changes;
    }

    /**
     * Tells a new order.
     *
     * @param order of the fields
     * @param open fields that still wait
     */
    void tell(List<String> order, Set<String> open) {
        List<Integer> places = new ArrayList<>();
        int missing = 0;
        for (String field : last.stream().filter(open::contains).limit(IN_MIND).toList()) {
            int place = order.indexOf(field);
            if (place < 0) {
                missing++;
            } else {
                places.add(place);
            }
        }
        changes += missing + places.size() - longestRising(places);
        last = List.copyOf(order);
    }

    /** What is not in the longest rising row has moved. */
    private static int longestRising(List<Integer> places) {
        int[] length = new int[places.size()];
        int longest = 0;
        for (int i = 0; i < length.length; i++) {
            length[i] = 1;
            for (int j = 0; j < i; j++) {
                if (places.get(j) < places.get(i)) {
                    length[i] = Math.max(length[i], length[j] + 1);
                }
            }
            longest = Math.max(longest, length[i]);
        }
        return longest;
    }
}
