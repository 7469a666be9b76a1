package rainward.daemon.board.form;

import static rainward.daemon.board.form.Kinds.Key.amount;
import static rainward.daemon.board.form.Kinds.Key.anyOf;
import static rainward.daemon.board.form.Kinds.Key.day;
import static rainward.daemon.board.form.Kinds.Key.lines;
import static rainward.daemon.board.form.Kinds.Key.oneOf;
import static rainward.daemon.board.form.Kinds.Key.orderedRows;
import static rainward.daemon.board.form.Kinds.Key.point;
import static rainward.daemon.board.form.Kinds.Key.words;
import static rainward.daemon.board.form.Kinds.Key.yesNo;

import java.time.DayOfWeek;
import java.util.List;
import rainward.daemon.board.form.Kinds.Kind;
import rainward.farm.Machine;
import rainward.farm.Operation;
import rainward.farm.SeedingMethod;

/** Who works, with what, by which stages. */
final class CrewKinds {

    private CrewKinds() {}

    static List<Kind> all() {
        return List.of(crew(), person(), machine(), recipe());
    }

    private static Kind crew() {
        return new Kind(
                "crew",
                "Hours of the crew",
                "the hours",
                "",
                List.of(
                        words("start", "The day begins", "for instance 06:30"),
                        words("end", "The day ends", "for instance 19:00"),
                        words("overtime", "Overtime at most", "for instance 2 h"),
                        anyOf("days", "Days of work", "none ticked: Monday to Saturday")
                                .from(DayOfWeek.values()),
                        yesNo("daylight_only", "By daylight only", "left open: yes"),
                        amount(
                                "road_factor",
                                "Road length over straight distance",
                                "1 to 3, left open: 1.3")));
    }

    private static Kind person() {
        return new Kind(
                "person",
                "People",
                "person",
                "name",
                List.of(
                        words("name", "Name", "as the crew says it"),
                        anyOf("machines", "Runs", "none ticked: every machine")
                                .from(Choices.MACHINES),
                        lines("away", "Away", "first and last day, both included")
                                .with(day("from", "from"), day("to", "to"))));
    }

    private static Kind machine() {
        return new Kind(
                "machine",
                "Machines",
                "machine",
                "name",
                List.of(
                        words("name", "Name", "as the crew says it"),
                        anyOf("operations", "Does", "one or more").from(Operation.values()),
                        amount("width", "Working width", "for instance 12 ft"),
                        amount("speed", "Working speed", "for instance 4.5 mph"),
                        amount(
                                "efficiency",
                                "Share of the time that works",
                                "0.05 to 1; 0.65 for seeding small fields"),
                        words("turn", "A turn at the headland takes", "left open: 20 s"),
                        amount("road_speed", "Speed on the road", "for instance 18 mph"),
                        words(
                                "hitch",
                                "Hitching at a move between properties takes",
                                "left open: 15 min"),
                        oneOf("weight", "Weight on wet ground", "left open: medium")
                                .from(Machine.MassClass.values()),
                        amount(
                                "refill_after",
                                "Ground worked by one fill",
                                "for instance 8 ac; left open: never filled"),
                        words("refill_stop", "A fill takes", "left open: 20 min"),
                        words(
                                "mix_change",
                                "Emptying and setting a seeder for another mix takes",
                                "of seeders only; left open: 40 min"),
                        point(
                                "stands_at",
                                "Where it stands at the start",
                                "degrees, for instance 42.152 and -84.512")));
    }

    private static Kind recipe() {
        return new Kind(
                "recipe",
                "Recipes",
                "recipe",
                "name",
                List.of(
                        words("name", "Name", "as the crew says it"),
                        orderedRows(
                                        "stage",
                                        "Stages, from stubble to seed",
                                        "Another place moves a stage; empty boxes take it"
                                                + " out. Exactly one seeds, and tells how. Waits as 4 h or 2 d,"
                                                + " wind as 10 mph. Waits and wind of a spray or"
                                                + " fertilizer come from its label; the label is"
                                                + " the law.")
                                .with(
                                        words("name", "Stage", ""),
                                        oneOf("operation", "Work", "").from(Operation.values()),
                                        oneOf("method", "Seeded how", "")
                                                .from(SeedingMethod.values()),
                                        words("least_wait", "Wait at least", ""),
                                        words("greatest_wait", "Wait at most", ""),
                                        amount("least_wind", "Wind at least", ""),
                                        amount("greatest_wind", "Wind at most", ""),
                                        words("dry_after", "Dry after it for", ""),
                                        yesNo("workable_soil", "Needs fit ground", ""),
                                        yesNo("rain_does_it", "A fair rain does it", ""))));
    }
}
