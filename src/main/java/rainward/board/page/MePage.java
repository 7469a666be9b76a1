package rainward.board.page;

import java.util.List;
import java.util.Optional;
import rainward.board.house.Entry;

/**
 * Whose words they are.
 *
 * @param frame around it
 * @param names that may be chosen on this machine
 * @param calendar address of the calendar
 */
public record MePage(Frame frame, List<String> names, String calendar) {

    /**
     * The settings file, for the lead.
     *
     * @param frame around it
     * @param groups of what is changed by form
     * @param text of the file, where it lies in the data folder
     * @param seen tells this text from others
     */
    public record SettingsPage(
            Frame frame, List<Entry.Group> groups, Optional<String> text, String seen) {

        /** The page of an entry, or that of a new one. */
        public static String path(String kind, Optional<String> name) {
            return "/settings/" + kind + name.map(n -> "/" + Frame.encoded(n)).orElse("");
        }
    }

    /**
     * One entry of the settings.
     *
     * @param frame around it
     * @param entry with its boxes
     * @param fault why it was not kept; empty where nobody tried
     */
    public record EntryPage(Frame frame, Entry entry, String fault) {

        /** More boxes than that in each of several lines are folded away, for a small window. */
        private static final int MOST_IN_SIGHT = 4;

        /** Where to go when it is done: the page of a field whose boundary it is, else all. */
        public String back() {
            return ofField() ? Frame.fieldPath(entry.name().orElse("")) : "/settings";
        }

        /** What stands on the way back. */
        public String backWords() {
            return ofField() ? entry.name().orElse("") : "All settings";
        }

        private boolean ofField() {
            return entry.kind().equals(Entry.BOUNDARY);
        }

        /** True where each line is opened by itself. */
        public boolean folded(Entry.Item item) {
            return item.lines().size() > 1 && item.lines().get(0).size() > MOST_IN_SIGHT;
        }

        /** A line that is folded away, by its number and its first words. */
        public String lineWords(List<Entry.Box> line, int index) {
            return line.stream()
                    .filter(box -> box.sort() == Entry.Sort.WORDS)
                    .skip(1)
                    .findFirst()
                    .map(Entry.Box::value)
                    .filter(words -> !words.isEmpty())
                    .map(words -> index + 1 + " " + words)
                    .orElse(index + 1 + " one more");
        }
    }
}
