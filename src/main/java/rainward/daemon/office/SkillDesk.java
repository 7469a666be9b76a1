package rainward.daemon.office;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import rainward.farm.Property;
import rainward.farm.Window;
import rainward.input.check.StandVerdict;
import rainward.store.Books;
import rainward.store.forecast.LessonBook;
import rainward.weather.past.PastWeather;
import rainward.weather.skill.ForecastCase;
import rainward.weather.skill.Recalibration;
import rainward.weather.skill.SaidChance;
import rainward.weather.skill.SeenChance;
import rainward.weather.source.PullOutcome;

/** Where chances are held against what came, and what that teaches is kept. */
public final class SkillDesk {

    /** Older experience is of other versions of the services' models; chosen. */
    private static final Duration LOOKED_BACK = Duration.ofDays(390);

    private static final Duration LEARN_EVERY = Duration.ofHours(20);
    private static final String LEARNED = "learned";

    private final Office office;
    private final PastDesk past;

    public SkillDesk(Office office) {
        this.office = office;
        this.past = new PastDesk(office);
    }

    /** When lessons were last looked for. */
    record Looked(Instant at) {}

    /** Keeps the chances of a forecast that had not been seen before. */
    static void layDown(Books books, String property, PullOutcome outcome) {
        if (outcome instanceof PullOutcome.Fetched fetched) {
            books.chances().add(property, SaidChance.of(fetched.forecast()));
        }
    }

    /** Looks once a day what past chances teach, and writes down what is new. */
    public void learn() {
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
        if (said.isEmpty()) {
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
