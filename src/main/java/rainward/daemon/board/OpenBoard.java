package rainward.daemon.board;

import java.util.List;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rainward.board.Board;
import rainward.board.house.Sheet;
import rainward.board.house.Standing;
import rainward.board.house.Takes;
import rainward.daemon.office.Office;
import rainward.daemon.office.PostDesk;
import rainward.daemon.service.Rounds;
import rainward.store.Books;

/** The board of a running service, open until it is closed. */
public final class OpenBoard implements AutoCloseable {

    private static final Logger LOG = LoggerFactory.getLogger(OpenBoard.class);

    private final Optional<Parts> parts;
    private final String words;

    private OpenBoard(Optional<Parts> parts, String words) {
        this.parts = parts;
        this.words = words;
    }

    /** What works together while the board is open. */
    private record Parts(Board board, Replanner replanner, Standings standings, Takes takes) {}

    /** Opens it as the settings say; mail and orders go on where it cannot listen. */
    public static OpenBoard asSet(Office office, Rounds rounds, PostDesk post) {
        int port = office.settings().board().port();
        if (port == 0) {
            return new OpenBoard(Optional.empty(), "Board: none, as the settings say.");
        }
        try {
            OpenBoard open = open(office, rounds, post, port);
            open.look();
            open.watch();
            return open;
        } catch (Board.CannotListen e) {
            LOG.error("{}", e.getMessage());
            return new OpenBoard(Optional.empty(), String.valueOf(e.getMessage()));
        }
    }

    /** Opens it as the settings say, or at any port that is free. */
    public static OpenBoard somewhere(Office office, Rounds rounds, PostDesk post) {
        try {
            return open(office, rounds, post, office.settings().board().port());
        } catch (Board.CannotListen e) {
            return open(office, rounds, post, 0);
        }
    }

    /**
     * Opens the board.
     *
     * @param office open
     * @param rounds of the service, whose results are shown
     * @param post that briefs are made at
     * @param port in place of the settings'; 0: any that is free
     */
    static OpenBoard open(Office office, Rounds rounds, PostDesk post, int port) {
        Standings standings = new Standings(office, post);
        rounds.tell(standings);
        Replanner replanner =
                new Replanner(rounds, standings, () -> office.store().read(Books::wordsSaid));
        WordTaker taker = new WordTaker(office, standings, replanner);
        try {
            Board board = Board.open(
                    new BoardHouse(office, standings, sheets(office, standings)),
                    taker,
                    BoardPlace.rules(office, port));
            return new OpenBoard(
                    Optional.of(new Parts(board, replanner, standings, taker)),
                    "Board: " + board.link());
        } catch (RuntimeException e) {
            replanner.close();
            throw e;
        }
    }

    private static List<Sheet> sheets(Office office, Standings standings) {
        return new BoardSheets(office, standings).all();
    }

    /** Works out what is shown first. */
    public void look() {
        parts.ifPresent(p -> p.replanner().look());
    }

    /** From now on words of commands beside the service move the order too. */
    void watch() {
        parts.ifPresent(p -> p.replanner().watch());
    }

    /** Where the board is, or why there is none, for people. */
    public String words() {
        return words;
    }

    /** What it shows now. */
    Standing standing() {
        return parts.orElseThrow().standings().now();
    }

    /** Who takes words down. */
    Takes takes() {
        return parts.orElseThrow().takes();
    }

    @Override
    public void close() {
        parts.ifPresent(p -> p.replanner().close());
        parts.ifPresent(p -> p.board().close());
    }
}
