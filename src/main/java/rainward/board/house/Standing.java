package rainward.board.house;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rainward.brief.Brief;
import rainward.cycle.Outlook;
import rainward.farm.Roster;
import rainward.farm.UnitSystem;
import rainward.queue.reasons.FieldReason;

/**
 * How things stand.
 *
 * @param turn counts up with every new order and every word taken down
 * @param farm whose it is
 * @param round the last one reckoned, if there was one
 * @param reckoning true while a new order is being worked out
 * @param effects what people said lately and what it changed, the newest first
 */
public record Standing(
        long turn, Farm farm, Optional<Round> round, boolean reckoning, List<Effect> effects) {

    public Standing {
        effects = List.copyOf(effects);
    }

    /**
     * Whose it is.
     *
     * @param name of the farm or crew
     * @param zone of its days
     * @param units people read
     */
    public record Farm(String name, ZoneId zone, UnitSystem units) {}

    /**
     * A round as it was reckoned.
     *
     * @param outlook fields, rain, plan, windows
     * @param brief the same as people read it
     * @param reasons why each field of the order stands where it does, by field
     * @param roster everything that is known by name
     */
    public record Round(
            Outlook outlook, Brief brief, Map<String, FieldReason> reasons, Roster roster) {

        public Round {
            reasons = Map.copyOf(reasons);
        }
    }

    /**
     * What somebody said and what it changed.
     *
     * @param key of the form
     * @param at when
     * @param by who
     * @param words what came of it
     * @param about the field that was spoken of, if it was one
     * @param changed lines about the order; empty while it is being worked out
     */
    public record Effect(
            String key,
            Instant at,
            String by,
            String words,
            Optional<About> about,
            Optional<List<String>> changed) {

        /** The same, with what it changed. */
        public Effect with(List<String> lines) {
            return new Effect(key, at, by, words, about, Optional.of(lines));
        }
    }

    /**
     * A field that somebody spoke of.
     *
     * @param field its name
     * @param stood its place in the order that was shown then, in words
     */
    public record About(String field, String stood) {}

    /** What became of a form, if it was sent lately. */
    public Optional<Effect> effect(String key) {
        return effects.stream().filter(e -> e.key().equals(key)).findFirst();
    }
}
