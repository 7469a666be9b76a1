package rainward.daemon.office;

import static java.util.stream.Collectors.toSet;

import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import rainward.brief.words.Reader;
import rainward.cycle.CycleInput;
import rainward.daemon.settings.Fault;
import rainward.daemon.settings.Secret;
import rainward.daemon.settings.Settings;
import rainward.daemon.settings.SettingsOutcome;
import rainward.daemon.settings.SettingsReader;
import rainward.farm.DayClock;
import rainward.farm.Field;
import rainward.farm.Mix;
import rainward.farm.Property;
import rainward.farm.Recipe;
import rainward.farm.Roster;
import rainward.intake.BadTableException;
import rainward.intake.ClimateTable;
import rainward.intake.SharedTables;
import rainward.intake.TableFolder;
import rainward.store.DatabaseServer;
import rainward.store.Store;
import rainward.weather.climate.Climate;

/** Settings, records and clock of one data folder. */
public final class Office implements AutoCloseable {

    private final HomeFolder home;
    private volatile Settled settled;
    private final Shelves shelves;
    private final InstantSource clock;

    /**
     * What is at hand.
     *
     * @param store records
     * @param mixes that all farms of the region share, by name
     * @param climate of the region
     */
    private record Shelves(Store store, Map<String, Mix> mixes, Climate climate) {}

    /**
     * What the settings say now.
     *
     * @param settings in force
     * @param mixes by name, the farm's own standing in for shared ones
     */
    private record Settled(Settings settings, Map<String, Mix> mixes) {

        static Settled of(Settings settings, Map<String, Mix> shared) {
            Map<String, Mix> mixes = new LinkedHashMap<>(shared);
            settings.work().ownMixes().forEach(mix -> mixes.put(mix.name(), mix));
            return new Settled(settings, mixes);
        }
    }

    private Office(HomeFolder home, Settings settings, Shelves shelves, InstantSource clock) {
        this.home = home;
        this.settled = Settled.of(settings, shelves.mixes());
        this.shelves = shelves;
        this.clock = clock;
    }

    /**
     * Reads a settings file.
     *
     * @throws Refusal with every fault
     */
    public static SettingsOutcome.Usable settings(Path file, Map<String, String> environment) {
        SettingsOutcome outcome = read(file, environment);
        if (outcome instanceof SettingsOutcome.Usable usable) {
            return usable;
        }
        throw Refusal.badInput(((SettingsOutcome.SettingsFaults) outcome)
                .faults().stream().map(Fault::words).toList());
    }

    /** Reads a settings file; its faults are values. */
    public static SettingsOutcome read(Path file, Map<String, String> environment) {
        SharedTables tables = new SharedTables(TableFolder.onClassPath());
        return new SettingsReader(environment, tables.species(), tables.regions()).read(file);
    }

    /** Opens the office of a data folder; its database is made where there is none. */
    public static Office open(HomeFolder home, Settings settings, InstantSource clock) {
        TableFolder tables = TableFolder.onClassPath();
        String region = settings.farm().region();
        try {
            Map<String, Mix> mixes = new SharedTables(tables).mixes(region);
            Climate climate = new ClimateTable(tables).of(region);
            Store store = store(home.made(), settings);
            return new Office(home, settings, new Shelves(store, mixes, climate), clock);
        } catch (BadTableException e) {
            throw Refusal.badInput(String.valueOf(e.getMessage()));
        }
    }

    /**
     * Opens the records, wherever the settings say that they are kept.
     *
     * @throws rainward.store.row.StoreException with one sentence where that cannot be done
     */
    public static Store store(HomeFolder home, Settings settings) {
        return settings.database()
                .map(at -> Store.open(server(at)))
                .orElseGet(() -> Store.open(home.path()));
    }

    /** The server that settings name, for the store. */
    public static DatabaseServer server(Settings.Database at) {
        return new DatabaseServer(
                at.url(), at.user(), at.password().map(Secret::reveal).orElse(""));
    }

    public HomeFolder home() {
        return home;
    }

    public Settings settings() {
        return settled.settings();
    }

    /**
     * From now on works with the crew, machines, recipes, mixes, inputs and prices of other
     * settings. The rest of them holds from the next start on, and so does all of them where days
     * or units of the farm change.
     *
     * @return true where the change holds already
     */
    public boolean adopt(Settings other) {
        boolean sameDays = other.farm().zone().equals(zone())
                && other.farm().units() == settings().farm().units();
        if (sameDays) {
            settled = Settled.of(settings().working(other), shelves.mixes());
        }
        return sameDays;
    }

    /**
     * Looks whether the fields that are recorded could live with other settings.
     *
     * @throws Refusal that names a field whose recipe or mix would be gone
     */
    public void mustFit(Settings other) {
        Settled next = Settled.of(settings().working(other), shelves.mixes());
        store().read(books -> books.fields().all()).forEach(field -> mustBeKnown(field, next));
    }

    private static void mustBeKnown(Field field, Settled next) {
        Set<String> recipes =
                next.settings().work().recipes().stream().map(Recipe::name).collect(toSet());
        if (!recipes.contains(field.wish().recipe())) {
            throw Refusal.badInput(field.name() + " goes by the recipe "
                    + field.wish().recipe() + "; give it another one first.");
        }
        field.wish().mixes().stream()
                .filter(mix -> !next.mixes().containsKey(mix))
                .findFirst()
                .ifPresent(mix -> {
                    throw Refusal.badInput(field.name() + " is to be sown with " + mix
                            + "; give it another mix first.");
                });
    }

    public Store store() {
        return shelves.store();
    }

    public Climate climate() {
        return shelves.climate();
    }

    public Map<String, Mix> mixes() {
        return settled.mixes();
    }

    public ZoneId zone() {
        return settings().farm().zone();
    }

    /** Days and times as the farm says them. */
    public DayClock dayClock() {
        return new DayClock(zone(), settings().farm().units());
    }

    /** Whoever reads on the farm. */
    public Reader reader() {
        return new Reader(dayClock(), settings().farm().units());
    }

    /** The moment; each piece of work asks once and keeps the answer. */
    public Instant now() {
        return clock.instant();
    }

    public InstantSource clock() {
        return clock;
    }

    /** Everything that is known by name, as of now. */
    public Roster roster() {
        return Roster.of(
                store().read(books -> books.fields().properties()),
                List.copyOf(mixes().values()),
                settings().work().recipes(),
                settings().work().crew());
    }

    /** How rounds are reckoned. */
    public CycleInput.Rules rules() {
        return new CycleInput.Rules(
                new CycleInput.Draw(
                        climate(),
                        settings().weather().traces().count(),
                        settings().weather().traces().seed()),
                settings().soil().workableShare(),
                settings().order().prices(),
                settings().window().rules(zone()),
                settings().farm().units());
    }

    /** Properties that have fields, with their places. */
    public List<String> properties() {
        return store().read(books ->
                books.fields().properties().stream().map(Property::name).toList());
    }

    /**
     * The field that a person means by the beginning of its name.
     *
     * @throws Refusal that says what would be right
     */
    public String fieldNamed(String text) {
        return NameMatch.of(
                        text,
                        store().read(books ->
                                books.fields().all().stream().map(Field::name).toList()))
                .orRefuse("field");
    }

    /** The property that a person means by the beginning of its name. */
    public String propertyNamed(String text) {
        return NameMatch.of(text, properties()).orRefuse("property");
    }

    @Override
    public void close() {
        store().close();
    }
}
