package rainward.board.page;

import java.util.List;

/**
 * What goes on the trucks.
 *
 * @param frame around it
 * @param lines what and how much
 * @param words where nothing can be told yet
 */
public record LoadsPage(Frame frame, List<Line> lines, String words) {

    /** Something to load. */
    public record Line(String what, String amount) {}

    public static LoadsPage of(Frame frame) {
        List<Line> lines = frame.standing().round().stream()
                .flatMap(r -> r.brief().ahead().load().stream())
                .map(l -> new Line(l.what(), l.amount()))
                .toList();
        return new LoadsPage(
                frame, lines, lines.isEmpty() ? "Nothing is to be loaded for today's order." : "");
    }
}
