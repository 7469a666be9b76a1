package rainward.daemon.board.form;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rainward.daemon.settings.Spelled;
import rainward.farm.Machine;
import rainward.farm.Operation;

/** What can be changed by form, by the keys of the settings file. */
final class Kinds {

    private Kinds() {}

    /** How the value of a key is written. */
    enum Sort {
        /** In quotes: names, times of day, lengths of time, days of the year. */
        WORDS,
        /** A plain number, or in quotes with its unit. */
        AMOUNT,
        YES_NO,
        ONE_OF,
        ANY_OF,
        /** Latitude and longitude. */
        POINT,
        /** First and last days. */
        DAYS,
        /** Tables of their own. */
        ROWS
    }

    /**
     * A key.
     *
     * @param path within the entry
     * @param sort of value
     * @param label for people
     * @param hint what would be right
     * @param choices where it is some of a few; names a kind of entry where it is those
     */
    record Key(String path, Sort sort, String label, String hint, List<String> choices) {

        static Key words(String path, String label, String hint) {
            return new Key(path, Sort.WORDS, label, hint, List.of());
        }

        static Key amount(String path, String label, String hint) {
            return new Key(path, Sort.AMOUNT, label, hint, List.of());
        }

        static Key of(String path, Sort sort, String label, String hint, String... choices) {
            return new Key(path, sort, label, hint, List.of(choices));
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
    }

    /** Choices that are the machines of the file. */
    static final String MACHINES = "@machine";

    /** Choices that are the species known here. */
    static final String SPECIES = "@species";

    static final List<Key> COMPONENT = List.of(
            Key.of("species", Sort.ONE_OF, "Seed", "", SPECIES),
            Key.amount("drilled", "Drilled", ""),
            Key.amount("broadcast", "Broadcast", ""),
            Key.amount("stand_weight", "Share in the stand's worth", ""));

    static final List<Kind> ALL = List.of(
            new Kind(
                    "crew",
                    "Hours of the crew",
                    "the hours",
                    "",
                    List.of(
                            Key.words("start", "The day begins", "for instance 06:30"),
                            Key.words("end", "The day ends", "for instance 19:00"),
                            Key.words("overtime", "Overtime at most", "for instance 2 h"),
                            Key.of(
                                    "days",
                                    Sort.ANY_OF,
                                    "Days of work",
                                    "none ticked: Monday to Saturday",
                                    words(java.time.DayOfWeek.values())),
                            Key.of(
                                    "daylight_only",
                                    Sort.YES_NO,
                                    "By daylight only",
                                    "left open: yes",
                                    "yes",
                                    "no"),
                            Key.amount(
                                    "road_factor",
                                    "Road length over straight distance",
                                    "1 to 3, left open: 1.3"))),
            new Kind(
                    "person",
                    "People",
                    "person",
                    "name",
                    List.of(
                            Key.words("name", "Name", "as the crew says it"),
                            Key.of(
                                    "machines",
                                    Sort.ANY_OF,
                                    "Runs",
                                    "none ticked: every machine",
                                    MACHINES),
                            Key.of(
                                    "away",
                                    Sort.DAYS,
                                    "Away",
                                    "first and last day, both included"))),
            machine(),
            mix(),
            new Kind(
                    "shed",
                    "The shed",
                    "the shed",
                    "",
                    List.of(
                            Key.amount("bag", "Bag of seed", "left open: 50 lb"),
                            Key.words("delivery", "Delivery takes", "left open: 5 d"))),
            new Kind(
                    "seed",
                    "Bags that weigh something else",
                    "kind of seed",
                    "species",
                    List.of(
                            Key.of("species", Sort.ONE_OF, "Seed", "", SPECIES),
                            Key.amount("bag", "Its bag", "for instance 25 lb"))),
            new Kind(
                    "product",
                    "Fertilizers that can be had",
                    "fertilizer",
                    "name",
                    List.of(
                            Key.words("name", "Name", "as on the bag"),
                            Key.amount("price", "Price", "US dollars a lb, with metric units a kg"),
                            Key.words(
                                    "grade",
                                    "Grade",
                                    "N-P2O5-K2O of its label, for instance 21-0-0; left open: the"
                                            + " usual one of this name"))));

    private static Kind machine() {
        return new Kind(
                "machine",
                "Machines",
                "machine",
                "name",
                List.of(
                        Key.words("name", "Name", "as the crew says it"),
                        Key.of(
                                "operations",
                                Sort.ANY_OF,
                                "Does",
                                "one or more",
                                words(Operation.values())),
                        Key.amount("width", "Working width", "for instance 12 ft"),
                        Key.amount("speed", "Working speed", "for instance 4.5 mph"),
                        Key.amount(
                                "efficiency",
                                "Share of the time that works",
                                "0.05 to 1; 0.65 for seeding small fields"),
                        Key.words("turn", "A turn at the headland takes", "left open: 20 s"),
                        Key.amount("road_speed", "Speed on the road", "for instance 18 mph"),
                        Key.words(
                                "hitch",
                                "Hitching at a move between properties takes",
                                "left open: 15 min"),
                        Key.of(
                                "weight",
                                Sort.ONE_OF,
                                "Weight on wet ground",
                                "left open: medium",
                                words(Machine.MassClass.values())),
                        Key.amount(
                                "refill_after",
                                "Ground worked by one fill",
                                "for instance 8 ac; left open: never filled"),
                        Key.words("refill_stop", "A fill takes", "left open: 20 min"),
                        Key.of(
                                "stands_at",
                                Sort.POINT,
                                "Where it stands at the start",
                                "degrees, for instance 42.152 and -84.512")));
    }

    private static Kind mix() {
        return new Kind(
                "mix",
                "Mixes of our own",
                "mix",
                "name",
                List.of(
                        Key.words(
                                "name",
                                "Name",
                                "the name of a shared mix: this one stands in for it"),
                        Key.amount("depth", "Sown at", "for instance 0.5 in"),
                        Key.amount(
                                "stand_target",
                                "Share of live seed that must make plants",
                                "for instance 35 %"),
                        Key.words("season.first_sowing", "Sown from", "month-day, 07-05"),
                        Key.words("season.last_sowing", "Sown until", "month-day, 08-15"),
                        Key.words(
                                "season.full_worth_until",
                                "Worth everything if up by",
                                "month-day, 08-05"),
                        Key.words(
                                "season.last_emergence",
                                "Worth anything if up by",
                                "month-day, 08-31"),
                        Key.amount(
                                "season.full_worth", "Worth against the best mix", "left open: 1"),
                        Key.amount(
                                "season.late_worth",
                                "Share of it on the last day",
                                "left open: 0.3"),
                        Key.of(
                                "component",
                                Sort.ROWS,
                                "What is in it",
                                "pure live seed, for instance 1.5 lb/ac")));
    }

    private static String[] words(Enum<?>[] all) {
        return Arrays.stream(all).map(Spelled::dashed).toArray(String[]::new);
    }

    static Optional<Kind> named(String table) {
        return ALL.stream().filter(kind -> kind.table().equals(table)).findFirst();
    }
}
