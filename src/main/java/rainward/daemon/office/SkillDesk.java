package rainward.daemon.office;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import rainward.farm.Property;
import rainward.farm.Window;
import rainward.feed.recorded.ArchivedForecasts;
import rainward.feed.terms.Service;
import rainward.input.check.StandVerdict;
import rainward.store.Books;
import rainward.store.forecast.LessonBook;
import rainward.weather.past.PastWeather;
import rainward.weather.skill.ForecastCase;
import rainward.weather.skill.Recalibration;
import rainward.weather.skill.SaidChance;
import rainward.weather.skill.SeenChance;
import rainward.weather.source.ForecastSeries;
import rainward.weather.source.PullOutcome;
import rainward.weather.source.RawPull;

/** Where chances are held against what came, and what that teaches is kept. */
public final class SkillDesk {

    /** Older experience is of other versions of the services' models; chosen. */
    private static final Duration LOOKED_BACK = Duration.ofDays(390);

    private static final Duration LEARN_EVERY = Duration.ofHours(20);
    private static final String LEARNED = "learned";
    private static final String ARCHIVE_READ = "archive read";
    private static final int ARCHIVED_AT_ONCE = 200;
    private static final List<String> FORECASTS =
            List.of(Service.NWS.code(), Service.MET_NORWAY.code(), Service.OPEN_METEO.code());

    private final Office office;
    private final PastDesk past;

    public SkillDesk(Office office) {
        this.office = office;
        this.past = new PastDesk(office);
    }

    /** When lessons were last looked for. */
    record Looked(Instant at) {}

    /**
     * Keeps the chances of a forecast that is new to a property. Whether the service had just sent
     * it does not matter: of properties that share a cell, only the first one's question goes out.
     */
    static void layDown(Books books, String property, PullOutcome outcome) {
        Optional<ForecastSeries> before = WeatherDesk.forecast(books, property);
        outcome.series()
                .filter(series -> !(outcome instanceof PullOutcome.Failed))
                .filter(series -> before.filter(old -> sameIssue(old.stamp(), series.stamp()))
                        .isEmpty())
                .ifPresent(series -> books.chances().add(property, SaidChance.of(series)));
    }

    private static boolean sameIssue(ForecastSeries.Stamp a, ForecastSeries.Stamp b) {
        return a.source().equals(b.source()) && a.issuedAt().equals(b.issuedAt());
    }

    /** Looks once a day what past chances teach, and writes down what is new. */
    public void learn() {
        readArchive();
        Instant now = office.now();
        office.store().inTransaction(books -> {
            boolean due = books.lastKnown()
                    .find(LEARNED, Looked.class)
                    .map(looked -> looked.at().plus(LEARN_EVERY).isBefore(now))
                    .orElse(true);
            if (due) {
                office.roster().properties().values().forEach(p -> learn(books, p, now));
                books.lastKnown().put(LEARNED, now, new Looked(now));
            }
            return due;
        });
    }

    /**
     * How far the archive has been read into the record.
     *
     * @param done properties whose chances are all in it
     * @param doing properties that are being read for
     * @param below answers with lower numbers are still to be read for them
     */
    record ArchiveRead(Set<String> done, Set<String> doing, long below) {

        static final ArchiveRead NOTHING = new ArchiveRead(Set.of(), Set.of(), Long.MAX_VALUE);

        ArchiveRead finished() {
            Set<String> all = new TreeSet<>(done);
            all.addAll(doing);
            return new ArchiveRead(all, Set.of(), Long.MAX_VALUE);
        }
    }

    /**
     * Reads chances out of answers that were kept before the record began, or before a property was
     * there; the newest first, a part at a time, so that no round takes long.
     */
    public void readArchive() {
        Instant now = office.now();
        office.store().inTransaction(books -> {
            ArchiveRead read = books.lastKnown()
                    .find(ARCHIVE_READ, ArchiveRead.class)
                    .orElse(ArchiveRead.NOTHING);
            if (read.doing().isEmpty()) {
                Set<String> missing = new TreeSet<>(office.roster().properties().keySet());
                missing.removeAll(read.done());
                read = new ArchiveRead(read.done(), missing, Long.MAX_VALUE);
            }
            if (!read.doing().isEmpty()) {
                books.lastKnown().put(ARCHIVE_READ, now, readOn(books, read));
            }
            return read;
        });
    }

    private ArchiveRead readOn(Books books, ArchiveRead read) {
        Map<Long, RawPull> answers =
                books.forecasts().newestOf(FORECASTS, read.below(), ARCHIVED_AT_ONCE);
        for (RawPull answer : answers.values()) {
            ArchivedForecasts.Forecast forecast = ArchivedForecasts.of(answer);
            for (String name : read.doing()) {
                Optional.ofNullable(office.roster().properties().get(name))
                        .flatMap(property -> forecast.at(property.place()))
                        .ifPresent(series -> books.chances().add(name, SaidChance.of(series)));
            }
        }
        long lowest = answers.keySet().stream().mapToLong(id -> id).min().orElse(0);
        return answers.size() < ARCHIVED_AT_ONCE
                ? read.finished()
                : new ArchiveRead(read.done(), read.doing(), lowest);
    }

    private void learn(Books books, Property property, Instant now) {
        Recalibration taught = Recalibration.of(seen(books, property, now));
        Optional<Recalibration> before =
                books.lessons().inForce(property.name(), now).map(LessonBook.Lesson::taught);
        boolean worthALine = taught.knowsAnything() || before.isPresent();
        if (worthALine && !before.equals(Optional.of(taught))) {
            books.lessons().add(property.name(), new LessonBook.Lesson(now, taught));
        }
    }

    /** What a property's chances are moved by, as of a moment. */
    static Recalibration taught(Books books, Property property, Instant now) {
        return books.lessons()
                .inForce(property.name(), now)
                .map(LessonBook.Lesson::taught)
                .orElse(Recalibration.NONE);
    }

    /** Since when a property's chances have been moved as they are now. */
    public Optional<Instant> learnedAt(String property) {
        return office.store()
                .read(books -> books.lessons().inForce(property, office.now()))
                .map(LessonBook.Lesson::learnedAt);
    }

    /** Chances of rain beside what came, by property. */
    public Map<String, List<SeenChance>> seen() {
        Instant now = office.now();
        return office.store().read(books -> {
            Map<String, List<SeenChance>> seen = new TreeMap<>();
            for (Property property : office.roster().properties().values()) {
                seen.put(property.name(), seen(books, property, now));
            }
            return seen;
        });
    }

    private List<SeenChance> seen(Books books, Property property, Instant now) {
        Window back = new Window(now.minus(LOOKED_BACK), now);
        List<SaidChance> said = books.chances().of(property.name(), back);
        // In a service's first hour nothing has passed yet of what it was told.
        if (said.isEmpty()
                || !said.get(0).window().from().isBefore(now.truncatedTo(ChronoUnit.HOURS))) {
            return List.of();
        }
        PastWeather weather =
                past.of(books, property, new Window(said.get(0).window().from(), now));
        return SeenChance.of(
                said, weather, instant -> office.climate().at(instant, property.place()));
    }

    /** Chances of a stand as given at seeding beside what was found; a thin stand is none. */
    public List<ForecastCase> stands() {
        return office.store().read(books -> books.stands().since(Instant.EPOCH)).stream()
                .filter(check -> check.finding().chanceAtSeeding().isPresent())
                .map(check -> new ForecastCase(
                        0,
                        check.finding().chanceAtSeeding().getAsDouble(),
                        check.result() == StandVerdict.UP))
                .toList();
    }
}
