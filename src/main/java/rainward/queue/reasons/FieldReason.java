package rainward.queue.reasons;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * Why a field stands where it does in the order.
 *
 * @param field its name
 * @param rank its place in the order
 * @param dayLaterHa what it loses if it is seeded a day later [ha of full stand]; below zero: it
 *     gains
 * @param goodUntil until when seeding earns at least nine tenths of what is planned
 * @param before field that the seeder does just before, if any
 * @param items why each of its items starts when it does
 * @param words for the user, one sentence
 */
public record FieldReason(
        String field,
        int rank,
        double dayLaterHa,
        Optional<Instant> goodUntil,
        Optional<String> before,
        List<ItemReason> items,
        String words) {

    public FieldReason {
        items = List.copyOf(items);
    }
}
