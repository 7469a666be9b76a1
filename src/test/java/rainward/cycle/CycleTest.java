package rainward.cycle;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import rainward.cycle.ground.SoilWord;
import rainward.farm.FieldCase;
import rainward.farm.FieldState;
import rainward.farm.FieldStatus;
import rainward.farm.Operation;
import rainward.farm.StageRecord;
import rainward.queue.check.PlanChecker;
import rainward.queue.problem.PlanItem;
import rainward.queue.search.Effort;
import rainward.readiness.Readiness.Gate.Kind;
import rainward.soil.SoilState;
import rainward.weather.alert.PublicAlert;
import rainward.weather.alert.PublicAlert.Severity;
import rainward.window.WindowDecision;
import rainward.window.WindowRecord;

class CycleTest {

    static final Effort EFFORT = Effort.tries(1, 3_000);
    static final FieldCase BENCH = DryJuly.untouched("Upper Bench", DryJuly.MILL, 3);
    static final FieldCase DAM = DryJuly.untouched("Dam Field", DryJuly.MILL, 2);
    static final FieldCase FORD = DryJuly.untouched("Ford", DryJuly.CREEK, 2.5);
    static final List<FieldCase> FIELDS = List.of(BENCH, DAM, FORD);

    @Test
    void theOrderKeepsEveryRuleAndSeedsAllAheadOfTheStorm() {
        Cycle.Result result = run(DryJuly.input(FIELDS, DryJuly.stormAhead()));

        assertThat(PlanChecker.faults(result.problem(), result.outlook().plan()))
                .isEmpty();
        Instant storm = DryJuly.MONDAY_FIVE.plusSeconds(DryJuly.STORM_AFTER_HOURS * 3600L);
        for (FieldCase item : FIELDS) {
            PlanItem seeding =
                    result.outlook().plan().seedingOf(item.field().name()).orElseThrow();
            assertThat(seeding.work().to()).isBefore(storm);
        }
    }

    @Test
    void equalInputGivesAnEqualOutlook() {
        CycleInput input = DryJuly.input(FIELDS, DryJuly.stormAhead());

        assertThat(run(input).outlook().plan()).isEqualTo(run(input).outlook().plan());
    }

    @Test
    void aLikelyStormOpensAWindowWhereGroundCanBeSeededBeforeIt() {
        Cycle.Result result = run(DryJuly.input(FIELDS, DryJuly.stormAhead()));

        assertThat(result.windows().decisions())
                .allMatch(d -> d.send() && d.step() == WindowDecision.Step.OPEN)
                .flatMap(d -> d.window().properties())
                .containsExactlyInAnyOrder("Mill Pond", "Otter Creek");
        assertThat(result.outlook().windows())
                .hasSize(result.windows().decisions().size());
    }

    @Test
    void aPropertyWithoutAForecastIsNamedAndTheRestIsPlanned() {
        Map<String, CycleInput.PropertyWeather> sky = new TreeMap<>(DryJuly.stormAhead());
        sky.put(
                "Otter Creek",
                new CycleInput.PropertyWeather(
                        Optional.empty(), DryJuly.past(DryJuly.CREEK.place(), 0)));

        Outlook outlook = run(DryJuly.input(FIELDS, sky)).outlook();

        assertThat(gates(outlook, "Ford")).contains(Kind.NO_FORECAST);
        assertThat(outlook.plan().seedingOf("Ford")).isEmpty();
        assertThat(outlook.plan().seedingOf("Upper Bench")).isPresent();
    }

    /** CAP 1.2: certainty says whether it comes, severity how grave it is. */
    private static PublicAlert alert(String event, Severity severity, String certainty) {
        Instant from = DryJuly.MONDAY_FIVE;
        return new PublicAlert(
                "urn:oid:2.49.0.1.840.0." + event.hashCode(),
                new PublicAlert.Message(PublicAlert.Type.ALERT, event, event, "", "Mill county"),
                new PublicAlert.Rank(severity, certainty, "Expected"),
                new PublicAlert.Times(from, from, Optional.of(from.plusSeconds(12 * 3600))),
                Set.of());
    }

    private static Outlook under(PublicAlert alert) {
        Map<String, CycleInput.PropertyWeather> sky = new TreeMap<>(DryJuly.stormAhead());
        CycleInput.PropertyWeather mill = DryJuly.weather(DryJuly.MILL, 0);
        sky.put(
                "Mill Pond",
                new CycleInput.PropertyWeather(
                        mill.forecast(),
                        mill.past(),
                        mill.ensembles(),
                        mill.taught(),
                        List.of(alert)));
        return run(DryJuly.input(FIELDS, sky)).outlook();
    }

    private static Optional<Instant> firstStart(Outlook outlook, String property) {
        return outlook.plan().items().stream()
                .filter(i -> i.place().property().equals(property))
                .map(i -> i.work().from())
                .min(Instant::compareTo);
    }

    @Test
    void noWorkIsPlannedWhereASevereThunderstormIsLikely() {
        Instant over = DryJuly.MONDAY_FIVE.plusSeconds(12 * 3600);

        Outlook outlook = under(alert("Severe Thunderstorm Warning", Severity.SEVERE, "Likely"));

        assertThat(firstStart(outlook, "Mill Pond"))
                .hasValueSatisfying(at -> assertThat(at).isAfterOrEqualTo(over));
        Outlook fair = run(DryJuly.input(FIELDS, DryJuly.stormAhead())).outlook();
        assertThat(firstStart(fair, "Mill Pond"))
                .hasValueSatisfying(at -> assertThat(at).isBefore(over));
    }

    @Test
    void watchHeatAndFrostLeaveTheDayToThePerson() {
        for (PublicAlert caution : List.of(
                alert("Severe Thunderstorm Watch", Severity.SEVERE, "Possible"),
                alert("Extreme Heat Warning", Severity.EXTREME, "Likely"),
                alert("Frost Advisory", Severity.MINOR, "Likely"),
                alert("Wind Advisory", Severity.MODERATE, "Likely"))) {
            assertThat(firstStart(under(caution), "Mill Pond"))
                    .as(caution.message().event())
                    .hasValueSatisfying(at ->
                            assertThat(at).isBefore(DryJuly.MONDAY_FIVE.plusSeconds(12 * 3600)));
        }
    }

    @Test
    void aSoakedPropertyWaitsUntilItIsFitAgain() {
        Map<String, CycleInput.PropertyWeather> sky = new TreeMap<>(DryJuly.stormAhead());
        sky.put("Mill Pond", DryJuly.weather(DryJuly.MILL, 60));

        Outlook outlook = run(DryJuly.input(FIELDS, sky)).outlook();

        Instant fit = seedbed(outlook, "Upper Bench").workableFrom().orElseThrow();
        assertThat(fit).isAfter(DryJuly.MONDAY_FIVE.plusSeconds(4 * 3600));
        outlook.plan().items().stream()
                .filter(i -> i.place().property().equals("Mill Pond"))
                .forEach(i -> assertThat(i.work().from()).isAfterOrEqualTo(fit));
        assertThat(seedbed(outlook, "Ford").workableFrom()).contains(DryJuly.MONDAY_FIVE);
    }

    @Test
    void whatSomebodySawOutranksWhatWasReckoned() {
        CycleInput dry = DryJuly.input(FIELDS, DryJuly.stormAhead());
        SoilWord wet = new SoilWord(DryJuly.MONDAY_FIVE, SoilState.Word.WET);
        CycleInput told = new CycleInput(
                dry.asOf(),
                dry.roster(),
                dry.fields(),
                dry.weather(),
                dry.rules(),
                new CycleInput.Memory(
                        Optional.empty(),
                        WindowRecord.NOTHING,
                        Set.of(),
                        Map.of("Ford", List.of(wet))));

        double reckoned = seedbed(run(dry).outlook(), "Ford").waterFraction();
        double seen = seedbed(run(told).outlook(), "Ford").waterFraction();
        assertThat(seen).isGreaterThan(reckoned + 0.1);
    }

    @Test
    void workThatIsDoneIsNotPlannedAgain() {
        FieldCase tilled = new FieldCase(
                FORD.field(),
                new FieldStatus(
                        FieldState.IN_WORK,
                        List.of(new StageRecord(
                                "till",
                                Optional.empty(),
                                Optional.of(DryJuly.MONDAY_FIVE.minusSeconds(50_000)),
                                Optional.of("tiller"))),
                        Optional.empty(),
                        Optional.empty(),
                        false));

        Outlook outlook =
                run(DryJuly.input(List.of(tilled), DryJuly.stormAhead())).outlook();

        assertThat(outlook.plan().items())
                .extracting(i -> i.place().operation())
                .containsExactly(Operation.SEED);
    }

    @Test
    void seededFieldsAreToldOfButNotPlanned() {
        FieldCase seeded = new FieldCase(
                FORD.field(),
                new FieldStatus(
                        FieldState.SEEDED,
                        List.of(),
                        Optional.of("turnip and rape"),
                        Optional.empty(),
                        false));

        Outlook outlook =
                run(DryJuly.input(List.of(BENCH, seeded), DryJuly.stormAhead())).outlook();

        assertThat(gates(outlook, "Ford")).containsExactly(Kind.NOT_WAITING);
        assertThat(outlook.plan().seedingOf("Ford")).isEmpty();
    }

    @Test
    void nothingToDoIsAnOutlookToo() {
        Outlook outlook = run(DryJuly.input(List.of(), Map.of())).outlook();

        assertThat(outlook.plan().items()).isEmpty();
        assertThat(outlook.windows()).isEmpty();
    }

    private static Cycle.Result run(CycleInput input) {
        return Cycle.run(input, EFFORT);
    }

    private static List<Kind> gates(Outlook outlook, String field) {
        return outlook.field(field).orElseThrow().readiness().gates().stream()
                .map(g -> g.kind())
                .toList();
    }

    private static Outlook.Seedbed seedbed(Outlook outlook, String field) {
        return outlook.field(field).orElseThrow().seedbed().orElseThrow();
    }
}
