package rainward.board.house;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Something in the settings that is changed by form: a person, a machine, a mix.
 *
 * @param kind of thing
 * @param name of it; empty where it is a new one or there is only one of its kind
 * @param title above the form
 * @param items in the order of the form
 * @param removable true where it can be taken out
 */
public record Entry(
        String kind, Optional<String> name, String title, List<Item> items, boolean removable) {

    /** The kind of the boundary of a field that is there. */
    public static final String BOUNDARY = "boundary";

    public Entry {
        items = List.copyOf(items);
    }

    /** Tells a text of the settings from another one. */
    public static String fingerprint(String text) {
        return Integer.toHexString(text.hashCode()) + "-" + text.length();
    }

    /** How a box is filled. */
    public enum Sort {
        WORDS,
        /** Many lines, typed or from a file. */
        TEXT,
        DAY,
        ONE_OF,
        ANY_OF
    }

    /**
     * One thing that is told.
     *
     * @param key in the settings
     * @param label above its boxes
     * @param hint what would be right, with an example
     * @param was what stood there when the form was drawn, in one line
     * @param boxes to fill
     */
    public record Item(String key, String label, String hint, String was, List<Box> boxes) {

        public Item {
            boxes = List.copyOf(boxes);
        }

        /**
         * Boxes line by line, where the same ones come again and again as the seeds of a mix do.
         */
        public List<List<Box>> lines() {
            String first = boxes.isEmpty() ? "" : boxes.get(0).label();
            List<List<Box>> lines = new ArrayList<>();
            for (Box box : boxes) {
                if (lines.isEmpty() || box.label().equals(first)) {
                    lines.add(new ArrayList<>());
                }
                lines.get(lines.size() - 1).add(box);
            }
            return lines;
        }
    }

    /**
     * A box.
     *
     * @param name of the part that it fills
     * @param label beside it; the label of the item where it is the only one
     * @param sort of box
     * @param value that stands in it
     * @param choices where it is one of a few
     */
    public record Box(String name, String label, Sort sort, String value, List<String> choices) {

        public Box {
            choices = List.copyOf(choices);
        }

        Box typed(Map<String, String> parts) {
            return new Box(name, label, sort, parts.getOrDefault(name, ""), choices);
        }
    }

    /** The same form with what was typed in its boxes. */
    public Entry typed(Map<String, String> parts) {
        return new Entry(
                kind,
                name,
                title,
                items.stream()
                        .map(item -> new Item(
                                item.key(),
                                item.label(),
                                item.hint(),
                                parts.getOrDefault("was." + item.key(), item.was()),
                                item.boxes().stream()
                                        .map(box -> box.typed(parts))
                                        .toList()))
                        .toList(),
                removable);
    }

    /**
     * Things of one kind.
     *
     * @param kind of thing
     * @param title above them
     * @param names of those that are there; empty where there is only one
     * @param single true where there is only one
     */
    public record Group(String kind, String title, Set<String> names, boolean single) {}
}
