package rainward.board.page;

import java.util.List;

/**
 * Whose words they are.
 *
 * @param frame around it
 * @param names that may be chosen on this machine
 * @param calendar address of the calendar
 */
public record MePage(Frame frame, List<String> names, String calendar) {}
