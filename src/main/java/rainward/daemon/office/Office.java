package rainward.daemon.office;

import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import rainward.cycle.CycleInput;
import rainward.daemon.settings.Fault;
import rainward.daemon.settings.Settings;
import rainward.daemon.settings.SettingsOutcome;
import rainward.daemon.settings.SettingsReader;
import rainward.farm.Field;
import rainward.farm.Mix;
import rainward.farm.Property;
import rainward.farm.Roster;
import rainward.intake.BadTableException;
import rainward.intake.ClimateTable;
import rainward.intake.SharedTables;
import rainward.intake.TableFolder;
import rainward.store.Store;
import rainward.weather.climate.Climate;

/** Settings, records and clock of one data folder. */
public final class Office implements AutoCloseable {

    private final HomeFolder home;
    private final Settings settings;
    private final Shelves shelves;
    private final InstantSource clock;

    /**
     * What is at hand.
     *
     * @param store records
     * @param mixes by name, the farm's own standing in for shared ones
     * @param climate of the region
     */
    private record Shelves(Store store, Map<String, Mix> mixes, Climate climate) {}

    private Office(HomeFolder home, Settings settings, Shelves shelves, InstantSource clock) {
        this.home = home;
        this.settings = settings;
        this.shelves = shelves;
        this.clock = clock;
    }

    /**
     * Reads a settings file.
     *
     * @throws Refusal with every fault
     */
    public static SettingsOutcome.Usable settings(Path file, Map<String, String> environment) {
        SharedTables tables = new SharedTables(TableFolder.onClassPath());
        SettingsOutcome outcome =
                new SettingsReader(environment, tables.species(), tables.regions()).read(file);
        if (outcome instanceof SettingsOutcome.Usable usable) {
            return usable;
        }
        throw Refusal.badInput(((SettingsOutcome.SettingsFaults) outcome)
                .faults().stream().map(Fault::words).toList());
    }

    /** Opens the office of a data folder; its database is made where there is none. */
    public static Office open(HomeFolder home, Settings settings, InstantSource clock) {
        TableFolder tables = TableFolder.onClassPath();
        String region = settings.farm().region();
        try {
            Map<String, Mix> mixes = new LinkedHashMap<>(new SharedTables(tables).mixes(region));
            settings.work().ownMixes().forEach(mix -> mixes.put(mix.name(), mix));
            Climate climate = new ClimateTable(tables).of(region);
            Store store = Store.open(home.made().path());
            return new Office(home, settings, new Shelves(store, mixes, climate), clock);
        } catch (BadTableException e) {
            throw Refusal.badInput(String.valueOf(e.getMessage()));
        }
    }

    public HomeFolder home() {
        return home;
    }

    public Settings settings() {
        return settings;
    }

    public Store store() {
        return shelves.store();
    }

    public Climate climate() {
        return shelves.climate();
    }

    public Map<String, Mix> mixes() {
        return shelves.mixes();
    }

    public ZoneId zone() {
        return settings.farm().zone();
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
                settings.work().recipes(),
                settings.work().crew());
    }

    /** How rounds are reckoned. */
    public CycleInput.Rules rules() {
        return new CycleInput.Rules(
                new CycleInput.Draw(
                        climate(),
                        settings.weather().traces().count(),
                        settings.weather().traces().seed()),
                settings.soil().workableShare(),
                settings.order().prices(),
                settings.window().rules(zone()),
                settings.farm().units());
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
