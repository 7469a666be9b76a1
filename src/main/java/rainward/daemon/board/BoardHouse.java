package rainward.daemon.board;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rainward.board.house.Entry;
import rainward.board.house.FieldFile;
import rainward.board.house.Gauge;
import rainward.board.house.House;
import rainward.board.house.Mark;
import rainward.board.house.Sheet;
import rainward.board.house.Standing;
import rainward.board.house.Supply;
import rainward.brief.post.OutboxRow;
import rainward.daemon.board.form.EntryDesk;
import rainward.daemon.board.form.SettingsFile;
import rainward.daemon.office.CalendarDesk;
import rainward.daemon.office.Office;
import rainward.daemon.office.OutboxSheet;
import rainward.daemon.skill.SkillSheet;
import rainward.daemon.skill.SkillText;
import rainward.daemon.yard.LoadDesk;
import rainward.daemon.yard.StockDesk;
import rainward.farm.Field;
import rainward.farm.FieldCase;
import rainward.farm.Person;
import rainward.farm.Property;
import rainward.farm.Window;
import rainward.input.load.LoadSheet;
import rainward.intake.BoundaryText;
import rainward.store.Books;
import rainward.store.ledger.Bounded;
import rainward.store.ledger.LedgerLine;
import rainward.store.ledger.Renamed;
import rainward.store.row.StoreException;
import rainward.weather.rain.RainOrigin;

/** The house of a running service. */
final class BoardHouse implements House {

    private static final Duration LATELY = Duration.ofDays(7);
    private static final int MOST_GAUGES = 40;

    private final Office office;
    private final Standings standings;
    private final List<Sheet> sheets;

    BoardHouse(Office office, Standings standings, List<Sheet> sheets) {
        this.office = office;
        this.standings = standings;
        this.sheets = List.copyOf(sheets);
    }

    @Override
    public Instant now() {
        return office.now();
    }

    @Override
    public Standing standing() {
        return standings.now();
    }

    @Override
    public Optional<FieldFile> file(String field) {
        return office.store()
                .read(books -> books.fields()
                        .named(field)
                        .or(() -> books.fields().presentName(field).flatMap(books.fields()::named))
                        .map(known -> file(books, known)));
    }

    private FieldFile file(Books books, Field known) {
        return new FieldFile(
                new FieldCase(known, books.journal().statusOf(known.name())),
                books.fields().boundaryOf(known.name()).stream()
                        .flatMap(edge -> BoundaryText.areaHa(edge).stream().boxed())
                        .findFirst(),
                new History(office.reader())
                        .of(new History.Written(
                                books.journal().of(known.name()),
                                of(books, Renamed.class, known),
                                of(books, Bounded.class, known),
                                books.stands().since(Instant.EPOCH).stream()
                                        .filter(look -> look.field().equals(known.name()))
                                        .toList())));
    }

    private static <T> List<LedgerLine<T>> of(Books books, Class<T> type, Field field) {
        return books.ledger().all(type).stream()
                .filter(line -> line.field().filter(field.name()::equals).isPresent())
                .toList();
    }

    @Override
    public Map<String, String> boundaries() {
        return office.store().read(books -> books.fields().boundaries());
    }

    @Override
    public LoadSheet loads() {
        LoadDesk desk = new LoadDesk(office);
        return desk.sheet(desk.today());
    }

    @Override
    public List<Supply> shed() {
        return standing().round().stream()
                .map(round -> new StockDesk(office).shed(round.outlook().plan()))
                .flatMap(shed -> shed.items().stream())
                .map(line -> new Supply(line.item(), line.words(), line.lacking() > 0))
                .toList();
    }

    @Override
    public Optional<String> settings() {
        return new SettingsFile(office).text();
    }

    @Override
    public List<Entry.Group> entries() {
        return new EntryDesk(office).groups();
    }

    @Override
    public Optional<Entry> entry(String kind, Optional<String> name) {
        return new EntryDesk(office).form(kind, name);
    }

    @Override
    public List<OutboxRow> outbox() {
        return office.store().read(books -> OutboxSheet.rows(books, office.now()));
    }

    @Override
    public List<Gauge> gauges() {
        Window lately = new Window(office.now().minus(LATELY), office.now().plusSeconds(1));
        return office.store().read(books -> gauges(books, lately));
    }

    private static List<Gauge> gauges(Books books, Window lately) {
        List<Gauge> all = new ArrayList<>();
        for (Property property : books.fields().properties()) {
            books.rain().newest(property.name(), lately).stream()
                    .filter(rain -> rain.source().equals(RainOrigin.GAUGE_SOURCE))
                    .map(rain -> new Gauge(property.name(), rain.window(), rain.amountMm()))
                    .forEach(all::add);
        }
        all.sort(Comparator.comparing((Gauge g) -> g.stretch().to()).reversed());
        return all.stream().limit(MOST_GAUGES).toList();
    }

    @Override
    public List<String> skill() {
        return SkillText.of(SkillSheet.of(office))
                .lines()
                .filter(l -> !l.isBlank())
                .toList();
    }

    @Override
    public List<Mark> health() {
        try {
            return new ServiceMarks(office).of(standing(), outbox());
        } catch (StoreException e) {
            Instant since = office.store().silentSince().orElseThrow(() -> e);
            String words = e.getMessage() + " Silent since "
                    + office.dayClock().near(since, office.now()) + ".";
            return List.of(new Mark("database", false, words));
        }
    }

    @Override
    public List<Sheet> sheets() {
        return sheets;
    }

    @Override
    public Optional<String> calendar(Optional<String> person) {
        CalendarDesk desk = new CalendarDesk(office);
        return standing()
                .round()
                .map(round ->
                        person.map(desk::feedOf).orElseGet(() -> desk.feed(Optional.empty())));
    }

    @Override
    public List<String> names() {
        List<String> names = new ArrayList<>(List.of("office"));
        office.settings().work().crew().people().stream().map(Person::name).forEach(names::add);
        return names;
    }

    @Override
    public void whenChanged(Runnable told) {
        standings.whenChanged(told);
    }
}
