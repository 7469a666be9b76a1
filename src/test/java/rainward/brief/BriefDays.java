package rainward.brief;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Supplier;
import rainward.brief.making.BriefInput;
import rainward.cycle.Outlook.Seedbed.Wetness;
import rainward.farm.Field;
import rainward.farm.FieldState;
import rainward.farm.Operation;
import rainward.farm.StageRecord;
import rainward.queue.problem.PlanItem;
import rainward.readiness.Readiness.Gate;
import rainward.weather.alert.PublicAlert;
import rainward.window.StormWindow;

/** Named days of the invented crew, each with the reason it is here. */
public final class BriefDays {

    public static final LocalDate THURSDAY = LocalDate.of(2026, 7, 16);

    private static final double[] STORM_ON_SATURDAY = {
        0.02, 0.03, 0.03, 0.02, 0.04, 0.05, 0.08, 0.1, 0.12, 0.35, 0.74, 0.55, 0.3, 0.15, 0.1, 0.1
    };

    private BriefDays() {}

    /** By name, in order of name. */
    public static Map<String, Supplier<DaySketch>> all() {
        Map<String, Supplier<DaySketch>> days = new TreeMap<>();
        days.put("dry-storm-in-three-days", BriefDays::dryStormInThreeDays);
        days.put("storm-firms-up", BriefDays::stormFirmsUp);
        days.put("all-too-wet", BriefDays::allTooWet);
        days.put("nothing-pending", BriefDays::nothingPending);
        days.put("season-over", BriefDays::seasonOver);
        days.put("no-forecast", BriefDays::noForecast);
        days.put("forecast-14-hours-old", BriefDays::ageingForecast);
        days.put("forecast-40-hours-old", BriefDays::staleForecast);
        days.put("late", BriefDays::late);
        days.put("hostile-names", BriefDays::hostileNames);
        days.put("clocks-go-back", BriefDays::clocksGoBack);
        days.put("failed-stands", BriefDays::failedStands);
        days.put("hot-and-windy", BriefDays::hotAndWindy);
        days.put("nothing-fits", BriefDays::nothingFits);
        days.put("sunday-off", BriefDays::sundayOff);
        days.put("nothing-changed", BriefDays::nothingChanged);
        days.put("monday-with-week", BriefDays::mondayWithWeek);
        days.put("woken-after-noon", BriefDays::wokenAfterNoon);
        return days;
    }

    /** One of them. */
    public static DaySketch day(String name) {
        return Optional.ofNullable(all().get(name)).map(Supplier::get).orElseThrow();
    }

    /** The day a brief is for: work for everybody, rain on Saturday. */
    public static DaySketch dryStormInThreeDays() {
        DaySketch day = new DaySketch(THURSDAY);
        day.state(FieldState.SEEDED, "Church West");
        day.rain("Mill Pond", STORM_ON_SATURDAY);
        day.rain("Kettle Lake", scaled(STORM_ON_SATURDAY, 0.9));
        day.rain("Otter Creek", scaled(STORM_ON_SATURDAY, 0.6));
        day.rain("Stone Church", scaled(STORM_ON_SATURDAY, 0.8));
        day.reason("Mill 3", "Dry seedbed, 74% chance of rain in 60 hours; the largest that fits.");
        day.reason("Kettle 1", "Tilled already, rain behind it, 11 min from Mill Pond.");
        day.work(1, "Mill 3", Operation.TILL, "till tractor/Ana", day.span(0, "06:30", "08:40"));
        day.work(1, "Mill 3", Operation.FIRM, "roller/Boyd", day.span(0, "13:10", "14:20"));
        day.seed(1, "Mill 3", 0.71, day.span(0, "09:00", "12:10"));
        day.work(2, "Kettle 1", Operation.TILL, "till tractor/Ana", day.span(0, "09:20", "10:50"));
        day.seed(2, "Kettle 1", 0.68, day.span(0, "13:00", "15:10"));
        day.work(3, "Otter Flat", Operation.SPREAD, "spreader/Boyd", day.span(0, "07:00", "10:20"));
        day.work(
                3, "Otter Flat", Operation.TILL, "till tractor/Ana", day.span(1, "06:30", "09:20"));
        day.seed(3, "Otter Flat", 0.57, day.span(1, "09:40", "14:00"));
        day.work(4, "Mill 5", Operation.TILL, "till tractor/Ana", day.span(1, "10:00", "10:50"));
        day.seed(4, "Mill 5", 0.66, day.span(1, "14:40", "15:40"));
        day.seed(5, "Church East", 0.52, day.span(2, "07:00", "08:20"));
        day.leaveOut("Kettle 2", "sprayed Wednesday, waits until Sunday by the label");
        day.leaveOut("Otter Knoll", "no hour left before the rain");
        day.last = Optional.of(dayBefore().asLast());
        day.books = usual -> new BriefInput.Books(
                List.of(
                        new Brief.LoadLine("three brassicas", "2 bags (103 lb)"),
                        new Brief.LoadLine("pelletized lime", "2 loads (8,400 lb)")),
                List.of(new Brief.StandCheck(
                        "Church West",
                        "three brassicas",
                        LocalDate.of(2026, 7, 8),
                        LocalDate.of(2026, 7, 16),
                        Brief.StandCheck.Why.SHOULD_SHOW)),
                Optional.of(new Brief.SeasonGoal(
                        SampleCrew.LAST_SOWING.atYear(2026), OptionalDouble.of(0.83))),
                List.of("Otter Knoll: is the gate on the east side open?"),
                List.of(),
                Optional.empty());
        return day;
    }

    private static DaySketch dayBefore() {
        DaySketch day = new DaySketch(THURSDAY.minusDays(1));
        day.rain(
                "Mill Pond",
                0.02,
                0.02,
                0.02,
                0.02,
                0.03,
                0.03,
                0.03,
                0.03,
                0.04,
                0.05,
                0.1,
                0.1,
                0.2,
                0.3,
                0.41,
                0.4);
        day.seed(1, "Church West", 0.6, day.span(0, "09:00", "12:00"));
        day.seed(2, "Kettle 1", 0.55, day.span(2, "13:00", "15:00"));
        day.seed(3, "Mill 3", 0.5, day.span(3, "09:00", "12:00"));
        day.seed(4, "Otter Knoll", 0.5, day.span(3, "13:00", "15:00"));
        return day;
    }

    /** A window is open and a public watch is out; the order was turned round. */
    public static DaySketch stormFirmsUp() {
        DaySketch day = new DaySketch(THURSDAY.plusDays(1));
        day.state(FieldState.SEEDED, "Church West", "Kettle 1", "Mill 3");
        SampleCrew.propertyNames()
                .forEach(p -> day.rain(p, 0.02, 0.03, 0.05, 0.1, 0.2, 0.6, 0.91, 0.7, 0.3, 0.1));
        day.seed(1, "Otter Flat", 0.74, day.span(0, "06:40", "11:00"));
        day.seed(2, "Mill 5", 0.77, day.span(0, "11:50", "12:50"));
        day.seed(3, "Church East", 0.7, day.span(0, "13:40", "15:00"));
        day.leaveOut("Kettle 2", "sprayed Wednesday, waits until Sunday by the label");
        day.leaveOut("Otter Knoll", "no hour left before the rain");
        day.last = Optional.of(dryStormInThreeDays().asLast());
        day.windows.add(window(day));
        day.alerts.add(watch(day));
        return day;
    }

    /** A storm on the next afternoon, two farms, two fields that fit and one that does not. */
    public static StormWindow window(DaySketch day) {
        return new StormWindow(
                "w1",
                new TreeSet<>(Set.of("Otter Creek", "Mill Pond")),
                0.91,
                new StormWindow.Arrival(day.at(1, "10:00"), day.at(1, "14:30"), day.at(1, "20:00")),
                new StormWindow.Amount(8, 18, 34),
                0.17,
                List.of(
                        new StormWindow.Fit(
                                "Otter Flat", day.at(0, "06:40"), day.at(1, "05:20"), 0.74),
                        new StormWindow.Fit(
                                "Mill 5", day.at(0, "11:50"), day.at(1, "08:50"), 0.77)),
                List.of("Otter Knoll"));
    }

    /** A watch of the public service for the same storm. */
    public static LocalAlert watch(DaySketch day) {
        return new LocalAlert(
                new PublicAlert(
                        "urn:oid:2.49.0.1.840.0.1",
                        new PublicAlert.Message(
                                PublicAlert.Type.ALERT,
                                "Severe Thunderstorm Watch",
                                "Severe thunderstorm watch in effect until Saturday evening",
                                "Be ready to move to a safe place.",
                                "Jackson; Lenawee"),
                        new PublicAlert.Rank(PublicAlert.Severity.SEVERE, "Possible", "Future"),
                        new PublicAlert.Times(
                                day.dueAt(), day.at(1, "11:00"), Optional.of(day.at(1, "21:00"))),
                        Set.of()),
                List.of("Otter Creek", "Mill Pond"));
    }

    /** After the storm: everything soaked, the first field dries in two days. */
    static DaySketch allTooWet() {
        DaySketch day = new DaySketch(THURSDAY.plusDays(4));
        day.fields.keySet().forEach(name -> {
            day.gate(name, Gate.Kind.NOT_WORKABLE, "too wet to carry the tractor");
            day.seedbed(name, day.bed(Wetness.SOAKED, 22, Optional.empty()));
        });
        day.seedbed("Mill 3", day.bed(Wetness.WET, 22, Optional.of(day.at(2, "11:00"))));
        day.seed(1, "Mill 3", 0.63, day.span(2, "11:00", "14:00"));
        day.fields.keySet().stream()
                .filter(name -> !name.equals("Mill 3"))
                .forEach(name -> day.leaveOut(name, "too wet for the days ahead"));
        return day;
    }

    /** All seed is in. */
    static DaySketch nothingPending() {
        DaySketch day = new DaySketch(LocalDate.of(2026, 8, 6));
        day.state(FieldState.UP, day.fields.keySet().toArray(String[]::new));
        day.state(FieldState.SEEDED, "Mill 3");
        return day;
    }

    /** What waits may not be sown any more. */
    static DaySketch seasonOver() {
        DaySketch day = new DaySketch(LocalDate.of(2026, 11, 12));
        day.state(FieldState.UP, "Mill 3", "Mill 5", "Kettle 1", "Otter Flat", "Church West");
        day.fields
                .keySet()
                .forEach(name ->
                        day.gate(name, Gate.Kind.OUT_OF_SEASON, "past the last day of every mix"));
        SampleCrew.propertyNames().forEach(p -> day.air(p, 8, 3, 3));
        return day;
    }

    /** The services are down and nothing usable is kept. */
    static DaySketch noForecast() {
        DaySketch day = new DaySketch(THURSDAY);
        day.forecast = false;
        day.fields.keySet().forEach(name -> {
            day.gate(name, Gate.Kind.NO_FORECAST, "no forecast");
            day.leaveOut(name, "no forecast");
        });
        day.warnings.add("nws did not answer since Tue 3:10 pm (connection refused).");
        return day;
    }

    static DaySketch ageingForecast() {
        DaySketch day = dryStormInThreeDays();
        day.forecastAge = Duration.ofHours(14);
        day.warnings.add("nws left out snow level at Otter Creek: not a number.");
        return day;
    }

    static DaySketch staleForecast() {
        DaySketch day = dryStormInThreeDays();
        day.forecastAge = Duration.ofHours(40);
        return day;
    }

    /** The machine was off at five. */
    static DaySketch late() {
        DaySketch day = dryStormInThreeDays();
        day.writtenAfter = Duration.ofMinutes(162);
        day.books = usual -> new BriefInput.Books(
                List.of(),
                List.of(),
                Optional.empty(),
                List.of(),
                List.of(new Brief.Undelivered(
                        "boyd@crew.example", "Wed, Jul 15: Church West first", "552 mailbox full")),
                Optional.empty());
        return day;
    }

    /** The order of the day before still holds. */
    static DaySketch nothingChanged() {
        DaySketch day = dryStormInThreeDays();
        day.last = Optional.of(day.asLast());
        return day;
    }

    /** Once a week the service says how it did. */
    static DaySketch mondayWithWeek() {
        DaySketch day = new DaySketch(THURSDAY.plusDays(4));
        SampleCrew.propertyNames().forEach(day::dryFor);
        day.seed(1, "Mill 5", 0.66, day.span(0, "07:40", "08:40"));
        day.books = usual -> new BriefInput.Books(
                List.of(),
                List.of(),
                Optional.empty(),
                List.of(),
                List.of(),
                Optional.of(new Brief.WeekReport(
                        new Brief.WeekReport.Post(7, 1, 23, 2),
                        8.5,
                        new Brief.WeekReport.Stands(3, 4, 0.68))));
        return day;
    }

    /** The machine slept until two in the afternoon; part of the day's work is behind it. */
    static DaySketch wokenAfterNoon() {
        DaySketch day = new DaySketch(THURSDAY);
        day.rain("Mill Pond", STORM_ON_SATURDAY);
        day.seed(1, "Mill 3", 0.71, day.span(0, "14:30", "17:30"));
        day.seed(2, "Mill 5", 0.66, day.span(1, "07:00", "08:00"));
        day.last = Optional.of(dryStormInThreeDays().asLast());
        day.writtenAfter = Duration.ofHours(9);
        return day;
    }

    /** Names that try to break the mail, the page and the direction of reading. */
    static DaySketch hostileNames() {
        DaySketch day = new DaySketch(THURSDAY);
        Field mill = day.field("Mill 3");
        String name = "Mill\r\nBcc: all@example.org";
        day.fields.remove("Mill 3");
        day.put(
                new Field(
                        name,
                        "<script>alert(1)</script>",
                        mill.place(),
                        mill.areaHa(),
                        mill.ground(),
                        mill.wish()),
                FieldState.PENDING,
                List.of(new StageRecord(
                        "dis\u202Ek",
                        Optional.of(day.at(-1, "15:00")),
                        Optional.empty(),
                        Optional.empty())));
        day.rain("<script>alert(1)</script>", STORM_ON_SATURDAY);
        day.reason(name, "\"><img src=x onerror=alert(1)> & so on\u2028next line");
        day.work(
                1,
                name,
                Operation.TILL,
                "\u202Erotcart/Zo\u00EB \uD83E\uDDD1\u200D\uD83C\uDF3E",
                day.span(0, "06:30", "08:40"));
        day.seed(1, name, "mix, with; commas\\and backslash", 0.71, day.span(0, "09:00", "12:10"));
        day.leaveOut(
                "Mill 5",
                "a word as long as "
                        + "Donaudampfschifffahrtselektrizitaetenhauptbetriebswerkbauunterbeamtengesellschaft");
        return day;
    }

    /** A Sunday of 25 hours; rye still goes in before dawn, in the hour that comes twice. */
    static DaySketch clocksGoBack() {
        DaySketch day = new DaySketch(LocalDate.of(2026, 11, 1));
        day.seed(
                1,
                "Mill 3",
                SampleCrew.FALL_BACK,
                0.48,
                new rainward.farm.Window(
                        day.at(0, "00:30"), day.at(0, "01:30").plus(Duration.ofHours(1))));
        day.seed(2, "Mill 5", SampleCrew.FALL_BACK, 0.46, day.span(0, "07:00", "08:00"));
        day.rain("Mill Pond", 0.2, 0.5, 0.6, 0.3);
        return day;
    }

    /** Two stands failed and are back; a late mix takes one; one stage is too long for a day. */
    static DaySketch failedStands() {
        DaySketch day = new DaySketch(LocalDate.of(2026, 8, 10));
        day.state(FieldState.SEEDED, "Mill 5", "Church East");
        day.state(FieldState.UP, "Church West", "Kettle 1");
        day.state(FieldState.FAILED, "Mill 3", "Otter Flat");
        day.reason("Otter Flat", "No stand; three brassicas would come up too late.");
        day.seed(1, "Mill 3", 0.55, day.span(0, "08:00", "11:00"));
        day.seed(2, "Otter Flat", SampleCrew.FALL_BACK, 0.61, day.span(0, "12:00", "17:30"));
        PlanItem half = day.items.remove(1);
        day.items.add(new PlanItem(
                half.rank(), half.place(), half.hands(), half.work(), 0.25, half.sowing(), 0.6));
        day.items.add(new PlanItem(
                half.rank(),
                half.place(),
                half.hands(),
                day.span(1, "07:00", "10:00"),
                0,
                half.sowing(),
                0.4));
        DaySketch before = new DaySketch(day.day.minusDays(1));
        before.seed(1, "Kettle 2", 0.5, before.span(1, "08:00", "11:00"));
        day.gate("Kettle 2", Gate.Kind.NO_SEED, "no seed of three brassicas left in the shed");
        day.leaveOut("Kettle 2", "no seed of three brassicas left in the shed");
        day.last = Optional.of(before.asLast());
        day.books = usual -> new BriefInput.Books(
                List.of(),
                List.of(
                        new Brief.StandCheck(
                                "Mill 5",
                                "three brassicas",
                                LocalDate.of(2026, 8, 1),
                                LocalDate.of(2026, 8, 8),
                                Brief.StandCheck.Why.SHOULD_SHOW),
                        new Brief.StandCheck(
                                "Church East",
                                "three brassicas",
                                LocalDate.of(2026, 8, 7),
                                LocalDate.of(2026, 8, 14),
                                Brief.StandCheck.Why.SHOULD_SHOW)),
                Optional.of(new Brief.SeasonGoal(
                        SampleCrew.LAST_SOWING.atYear(2026), OptionalDouble.of(0.22))),
                List.of(),
                List.of(),
                Optional.empty());
        return day;
    }

    /** A day on which the cautions are the news. */
    static DaySketch hotAndWindy() {
        DaySketch day = new DaySketch(THURSDAY);
        SampleCrew.propertyNames().forEach(p -> {
            day.air(p, 36, 25, 4.2);
            day.rain(p, 0.05, 0.1, 0.35, 0.3, 0.1, 0.05);
        });
        day.air("Otter Creek", 38, 26, 5);
        day.work(1, "Otter Knoll", Operation.SPRAY, "sprayer/Boyd", day.span(0, "06:30", "08:00"));
        day.work(2, "Otter Flat", Operation.SPREAD, "spreader/Dell", day.span(0, "13:00", "16:00"));
        day.seed(3, "Kettle 2", 0.4, day.span(0, "09:00", "10:30"));
        return day;
    }

    static DaySketch nothingFits() {
        DaySketch day = new DaySketch(THURSDAY);
        day.fields.keySet().forEach(name -> day.leaveOut(name, "the seeder is away all week"));
        return day;
    }

    static DaySketch sundayOff() {
        DaySketch day = new DaySketch(THURSDAY.plusDays(3));
        day.work(1, "Mill 3", Operation.TILL, "till tractor/Ana", day.span(1, "06:30", "08:40"));
        day.seed(1, "Mill 3", 0.6, day.span(1, "09:00", "12:10"));
        return day;
    }

    private static double[] scaled(double[] chances, double by) {
        return java.util.Arrays.stream(chances).map(c -> c * by).toArray();
    }
}
