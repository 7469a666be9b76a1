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
    public record EntryPage(Frame frame, Entry entry, String fault) {}
}
