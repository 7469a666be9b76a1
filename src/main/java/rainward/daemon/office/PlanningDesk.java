package rainward.daemon.office;

import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.LongSupplier;
import rainward.cycle.Cycle;
import rainward.cycle.CycleBench;
import rainward.cycle.CycleInput;
import rainward.cycle.Outlook;
import rainward.daemon.yard.SupplyDesk;
import rainward.farm.Property;
import rainward.queue.plan.Planner;
import rainward.queue.problem.Plan;
import rainward.queue.search.Effort;
import rainward.store.Books;
import rainward.store.round.PlanLog;
import rainward.window.WindowRecord;

/** Where a round is reckoned from the records, and written back to them. */
public final class PlanningDesk {

    /** Orders of 36 fields that one core of a 2020s office PC tries in a millisecond, measured. */
    private static final long TRIES_PER_MS = 150;

    private static final String WINDOWS = "windows";

    private final Office office;
    private final PastDesk past;

    public PlanningDesk(Office office) {
        this.office = office;
        this.past = new PastDesk(office);
    }

    /** Reckons a round as of now; nothing is written. */
    public Cycle.Result reckon() {
        return Cycle.run(input(), effort());
    }

    /**
     * Reckons a round from the records, gives its order out and tells how long each part took.
     *
     * @param nanos clock
     * @return milliseconds by part, in order
     */
    public Map<String, Double> timed(LongSupplier nanos) {
        long before = nanos.getAsLong();
        CycleInput input = input();
        long read = nanos.getAsLong();
        CycleBench.Timed timed = CycleBench.run(input, effort(), nanos);
        long reckoned = nanos.getAsLong();
        office.store().inTransaction(books -> {
            giveOut(books, timed.result(), "measured");
            return timed;
        });
        Map<String, Double> partMs = new LinkedHashMap<>();
        partMs.put("records", (read - before) / 1e6);
        partMs.putAll(timed.partMs());
        partMs.put("store", (nanos.getAsLong() - reckoned) / 1e6);
        return partMs;
    }

    /** How fields stand as of now, beside the order that was given out last. */
    public Outlook standing() {
        return Cycle.of(input()).unordered();
    }

    /** An order as of now; nothing is written. */
    public Plan plan() {
        return Planner.plan(Cycle.of(input()).problem(), effort());
    }

    private CycleInput input() {
        Instant now = office.now();
        return office.store().read(books -> input(books, now));
    }

    /** What a round starts from, out of the records. */
    CycleInput input(Books books, Instant now) {
        Map<String, CycleInput.PropertyWeather> weather = new TreeMap<>();
        for (Property property : books.fields().properties()) {
            weather.put(
                    property.name(),
                    new CycleInput.PropertyWeather(
                            WeatherDesk.forecast(books, property.name()),
                            past.of(books, property, now),
                            EnsembleDesk.ensembles(books, property, now),
                            SkillDesk.taught(books, property, now),
                            AlertDesk.at(books, property.name())));
        }
        return new CycleInput(
                now,
                office.roster(),
                books.cases(),
                weather,
                office.rules(),
                memory(books),
                new SupplyDesk(office).fillings(books, LocalDate.ofInstant(now, office.zone())));
    }

    private static CycleInput.Memory memory(Books books) {
        return new CycleInput.Memory(
                books.plans().last().map(PlanLog.GivenPlan::plan),
                books.lastKnown().find(WINDOWS, WindowRecord.class).orElse(WindowRecord.NOTHING),
                Set.of(),
                books.soilWords().all());
    }

    /**
     * So many tries as a usual PC does in the time that the settings allow: counted, not timed, so
     * that the same records give the same order each time somebody asks.
     */
    public Effort effort() {
        long tries = office.settings().order().thinking().toMillis() * TRIES_PER_MS;
        return Effort.tries(office.settings().order().seed(), Math.max(1, tries));
    }

    /**
     * Gives the order out: the next round starts from it, and no change of it is free any more.
     *
     * @param books of the transaction that also holds what the round causes
     * @param result of the round
     * @param cause in a word or two
     */
    static void giveOut(Books books, Cycle.Result result, String cause) {
        Instant asOf = result.outlook().asOf();
        Plan plan = result.outlook().plan();
        boolean same = books.plans()
                .last()
                .filter(given -> given.plan().items().equals(plan.items()))
                .isPresent();
        if (!same) {
            books.plans().add(new PlanLog.GivenPlan(plan, asOf, cause));
        }
        books.lastKnown().put(WINDOWS, asOf, result.windows().next());
    }
}
