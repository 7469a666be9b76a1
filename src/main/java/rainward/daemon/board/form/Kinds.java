package rainward.daemon.board.form;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rainward.daemon.settings.Spelled;

/** What can be changed by form, by the keys of the settings file. */
final class Kinds {

    private Kinds() {}

    /** How the value of a key is written. */
    enum Sort {
        /** In quotes: names, times of day, lengths of time, days of the year. */
        WORDS,
        /** Many lines; in no settings file. */
        TEXT,
        /** A plain number, or in quotes with its unit. */
        AMOUNT,
        YES_NO,
        /** A day of a year. */
        DAY,
        ONE_OF,
        ANY_OF,
        /** Latitude and longitude. */
        POINT,
        /** A list in one value: {@code [{ from = ..., to = ... }]}. */
        LINES,
        /** Tables of their own: {@code [[mix.component]]}. */
        ROWS,
        /** The same where their order counts. */
        ORDERED_ROWS
    }

    /**
     * A key.
     *
     * @param path within the entry
     * @param sort of value
     * @param label for people
     * @param hint what would be right
     * @param choices where it is some of a few; names a kind of entry where it is those
     * @param columns of its lines, where it has some
     */
    record Key(
            String path,
            Sort sort,
            String label,
            String hint,
            List<String> choices,
            List<Key> columns) {

        private static Key of(Sort sort, String path, String label, String hint) {
            return new Key(path, sort, label, hint, List.of(), List.of());
        }

        static Key words(String path, String label, String hint) {
            return of(Sort.WORDS, path, label, hint);
        }

        static Key text(String path, String label, String hint) {
            return of(Sort.TEXT, path, label, hint);
        }

        static Key amount(String path, String label, String hint) {
            return of(Sort.AMOUNT, path, label, hint);
        }

        static Key day(String path, String label) {
            return of(Sort.DAY, path, label, "");
        }

        static Key point(String path, String label, String hint) {
            return of(Sort.POINT, path, label, hint);
        }

        static Key yesNo(String path, String label, String hint) {
            return of(Sort.YES_NO, path, label, hint).from("yes", "no");
        }

        static Key oneOf(String path, String label, String hint) {
            return of(Sort.ONE_OF, path, label, hint);
        }

        static Key anyOf(String path, String label, String hint) {
            return of(Sort.ANY_OF, path, label, hint);
        }

        static Key lines(String path, String label, String hint) {
            return of(Sort.LINES, path, label, hint);
        }

        static Key rows(String path, String label, String hint) {
            return of(Sort.ROWS, path, label, hint);
        }

        static Key orderedRows(String path, String label, String hint) {
            return of(Sort.ORDERED_ROWS, path, label, hint);
        }

        /** True where each of its lines is a table of its own in the file. */
        boolean tables() {
            return sort == Sort.ROWS || sort == Sort.ORDERED_ROWS;
        }

        Key from(String... few) {
            return new Key(path, sort, label, hint, List.of(few), columns);
        }

        Key from(Enum<?>[] few) {
            return from(Arrays.stream(few).map(Spelled::dashed).toArray(String[]::new));
        }

        Key with(Key... parts) {
            return new Key(path, sort, label, hint, choices, List.of(parts));
        }

        boolean listed() {
            return !columns.isEmpty();
        }
    }

    /**
     * A kind of entry.
     *
     * @param table in the file
     * @param title above all of them
     * @param one of them, as people say it
     * @param naming key that holds its name; empty where there is only one
     * @param keys in the order of the form, the naming one first
     */
    record Kind(String table, String title, String one, String naming, List<Key> keys) {

        boolean single() {
            return naming.isEmpty();
        }

        /** A table that means something by being there can be taken out whole. */
        boolean removable() {
            return !single() || table.equals(PostKinds.MAIL);
        }
    }

    static final List<Kind> ALL = Stream.of(CrewKinds.all(), YardKinds.all(), PostKinds.all())
            .flatMap(List::stream)
            .toList();

    static Optional<Kind> named(String table) {
        return ALL.stream().filter(kind -> kind.table().equals(table)).findFirst();
    }
}
