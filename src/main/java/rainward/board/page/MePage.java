package rainward.board.page;

import java.util.List;
import java.util.Optional;

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
     * @param text of the file, where it lies in the data folder
     */
    public record SettingsPage(Frame frame, Optional<String> text) {}
}
