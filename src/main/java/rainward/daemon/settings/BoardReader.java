package rainward.daemon.settings;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;

/**
 * Reads the table of the local page.
 *
 * @param settings file, against whose folder paths are taken
 */
record BoardReader(Path settings) {

    /** Free for use by anybody (RFC 6335 section 6: user ports). */
    private static final int USUAL_PORT = 8640;

    private static final Bounds.Span SESSION =
            Bounds.Span.usually(Duration.ofHours(14), Duration.ofMinutes(5), Duration.ofDays(30));

    Settings.Board board(Section board) {
        String listen =
                board.maybeText("listen", "must be an address of this machine").orElse("127.0.0.1");
        Optional<InetAddress> address = address(listen);
        if (address.isEmpty()) {
            board.wrong("listen", "must be an address of this machine, for instance 127.0.0.1");
        }
        Settings.Board read = new Settings.Board(
                listen,
                (int) board.whole("port", new Bounds.Whole(USUAL_PORT, 0, 65_535)),
                door(board, address.map(InetAddress::isLoopbackAddress).orElse(true)),
                tiles(board));
        board.end();
        return read;
    }

    /** Only written addresses: a name could mean another machine tomorrow. */
    private static Optional<InetAddress> address(String text) {
        try {
            return text.matches("[0-9.]+|[0-9a-fA-F:]+")
                    ? Optional.of(InetAddress.getByName(text))
                    : Optional.empty();
        } catch (UnknownHostException e) {
            return Optional.empty();
        }
    }

    private Settings.Door door(Section board, boolean loopback) {
        Settings.BoardTls usual = loopback ? Settings.BoardTls.NONE : Settings.BoardTls.SELF_MADE;
        Settings.BoardTls tls = board.choice("tls", usual);
        Optional<Settings.GivenCertificate> given = certificate(board);
        if (tls == Settings.BoardTls.NONE && !loopback && given.isEmpty()) {
            board.wrong(
                    "tls",
                    "PINs would cross the network for all to hear: leave it out, or write"
                            + " \"self-made\"");
        }
        return new Settings.Door(board.names("names"), board.span("session", SESSION), tls, given);
    }

    private Optional<Settings.GivenCertificate> certificate(Section board) {
        if (!board.has("certificate")) {
            return Optional.empty();
        }
        Section table = board.table("certificate");
        Settings.GivenCertificate given =
                new Settings.GivenCertificate(file(table, "file"), file(table, "key_file"));
        table.end();
        return Optional.of(given);
    }

    private Path file(Section table, String key) {
        String text = table.text(key, "must be the path of a PEM file");
        Path file = settings.toAbsolutePath().resolveSibling(text);
        if (!text.equals(Section.NAMELESS) && !Files.isReadable(file)) {
            table.wrong(key, "must be a PEM file that can be read");
        }
        return file;
    }

    private static Optional<String> tiles(Section board) {
        Optional<String> tiles =
                board.maybeText("tiles", "must be an address with {z}, {x} and {y}");
        boolean right = tiles.map(address -> address.matches("https?://[^\\s\"'<>;,]+")
                        && address.contains("{z}")
                        && address.contains("{x}")
                        && address.contains("{y}"))
                .orElse(true);
        if (!right) {
            board.wrong("tiles", "must be an address with {z}, {x} and {y}");
        }
        return tiles;
    }
}
