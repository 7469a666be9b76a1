package rainward.daemon.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.brief.Brief;
import rainward.brief.post.FailedTry;
import rainward.brief.post.Outgoing;
import rainward.cycle.Cycle;
import rainward.daemon.demo.InventedWeather;
import rainward.daemon.service.Rounds;
import rainward.daemon.word.SoilDesk;
import rainward.daemon.word.StageDesk;
import rainward.daemon.yard.SupplyDesk;
import rainward.daemon.yard.season.SeasonDesk;
import rainward.farm.Window;
import rainward.feed.terms.Pacing;
import rainward.input.check.StandVerdict;
import rainward.store.Books;
import rainward.store.journal.JournalEntry;
import rainward.store.journal.StageWord;
import rainward.store.journal.StandBook;
import rainward.store.round.BriefLog;
import rainward.weather.rain.RainObservation;

/** What the desks put beside the order, on the Monday of the invented crew's story. */
class DesksIT {

    private static final Instant MONDAY = InventedWeather.MONDAY;
    private static final LocalDate TODAY = LocalDate.of(2026, 7, 13);

    @TempDir
    static Path home;

    private static InventedWeather weather;
    private static Office office;
    private static Rounds rounds;
    private static Instant now = MONDAY;
    private static Optional<Cycle.Result> lastResult = Optional.empty();
    private static Optional<PostDesk.Morning> first = Optional.empty();

    @BeforeAll
    static void morning() throws IOException {
        weather = new InventedWeather();
        String crew = Files.readString(Path.of("config", "demo.toml"))
                .replaceAll("(?s)\\n\\[weather\\.address\\].*?(?=\\n\\[)", "");
        Path settings = Files.writeString(
                home.resolve("rainward.toml"),
                crew + """

                [weather.address]
                nws = "%s"
                acis = "%s"
                met_norway = "%s"
                """.formatted(weather.address(), weather.address(), weather.address()));
        office = Office.open(
                new HomeFolder(home), Office.settings(settings, Map.of()).settings(), () -> now);
        new SurveyDesk(office).take(Path.of("config", "demo-fields.geojson"));
        rounds = new Rounds(
                office,
                new WeatherDesk(office, new Pacing(1, wait -> {})),
                new PostDesk(office, Map.of()));
        rounds.tell(new Rounds.Hearer() {
            @Override
            public void begins() {}

            @Override
            public void reckoned(Cycle.Result reckoned) {
                lastResult = Optional.of(reckoned);
            }
        });
        first = rounds.brief();
    }

    @AfterAll
    static void close() {
        office.close();
        weather.close();
    }

    private static Cycle.Result result() {
        return lastResult.orElseThrow();
    }

    /** What follows from records that are taken back afterwards. */
    private static <T> T supposing(Consumer<Books> records, Function<Books, T> asked) {
        List<T> answer = new ArrayList<>();
        try {
            office.store().inTransaction(books -> {
                records.accept(books);
                answer.add(asked.apply(books));
                throw new TakenBack();
            });
        } catch (TakenBack expected) {
            return answer.get(0);
        }
        throw new AssertionError("nothing was taken back");
    }

    private static final class TakenBack extends RuntimeException {
        private static final long serialVersionUID = 1;
    }

    private static void seeded(Books books, String field, String at) {
        new StageDesk(office)
                .take(
                        books,
                        new StageDesk.Said(
                                StageDesk.Verb.DONE,
                                field,
                                "seed",
                                Optional.of(at),
                                "Dell",
                                new StageWord.Means(
                                        Optional.empty(), Optional.empty(), Set.of("till"))));
    }

    private static double areaHa(String field) {
        return office.store()
                .read(books -> books.fields().named(field).orElseThrow().areaHa());
    }

    private static JournalEntry.Said said(String at) {
        return new JournalEntry.Said(Instant.parse(at), Instant.parse(at), "Dell");
    }

    @Test
    void oneBriefADayWhereverTheClockIsSet() {
        assertThat(first).isPresent();
        for (Duration back : List.of(
                Duration.ZERO,
                Duration.ofMinutes(30),
                Duration.ofHours(10),
                Duration.ofHours(-1))) {
            now = MONDAY.minus(back);
            assertThat(rounds.brief()).as("set back by %s", back).isEmpty();
        }
        now = MONDAY;

        assertThat(office.store()
                        .<List<String>>read(books -> books.outbox().since(Instant.EPOCH).stream()
                                .map(row -> row.message().key().event())
                                .filter(event -> event.startsWith("brief/"))
                                .distinct()
                                .toList()))
                .containsExactly("brief/2026-07-13");
    }

    /** The earliest last day of the wanted mixes, as the season table of the region has them. */
    @Test
    void seasonEndsWithTheFirstWantedMixThatMayNotBeSownAnyMore() {
        LocalDate earliest = List.of(
                        "turnip and rape",
                        "three brassicas",
                        "clover and turnip",
                        "kale and radish")
                .stream()
                .map(mix -> Objects.requireNonNull(office.mixes().get(mix))
                        .season()
                        .lastSowing()
                        .atYear(2026))
                .min(LocalDate::compareTo)
                .orElseThrow();

        Brief.SeasonGoal goal = supposing(books -> {}, DesksIT::goal).orElseThrow();

        assertThat(goal.lastSowing()).isEqualTo(earliest);
        assertThat(goal.finishChance().orElseThrow()).isBetween(0.0, 1.0);
    }

    @Test
    void slowRecordOfTheSeasonLowersTheChanceToFinish() {
        double asPlanned = chance(books -> {});

        double small = chance(books -> {
            seeded(books, "MP6 Back Corner", "2026-07-01 15:00");
            seeded(books, "KL4 Point", "2026-07-08 15:00");
            seeded(books, "SC6 Lane End", "2026-07-09 15:00");
        });

        assertThat(small).isLessThan(asPlanned);
    }

    private static Optional<Brief.SeasonGoal> goal(Books books) {
        return new SeasonDesk(office).view(books, result().outlook().plan()).goal();
    }

    private static double chance(Consumer<Books> records) {
        return supposing(records, DesksIT::goal)
                .flatMap(goal -> goal.finishChance().stream().boxed().findFirst())
                .orElseThrow();
    }

    @Test
    void weekIsToldOnItsMondayOnlyAndCountsWhatHappenedInIt() {
        Consumer<Books> week = books -> {
            for (int back = 1; back <= 6; back++) {
                Instant at = MONDAY.minus(Duration.ofDays(back));
                books.briefs()
                        .take(new BriefLog.WrittenBrief(
                                TODAY.minusDays(back), at, at, back % 3 == 0, ""));
            }
            sent(books, "brief/2026-07-10", "2026-07-10T09:00:00Z");
            sent(books, "brief/2026-07-11", "2026-07-11T09:00:00Z");
            refused(books, "brief/2026-07-12", "2026-07-12T09:00:00Z");
            sent(books, "brief/2026-07-01", "2026-07-01T09:00:00Z");
            seeded(books, "MP6 Back Corner", "2026-07-08 15:00");
            seeded(books, "KL4 Point", "2026-07-01 15:00");
            looked(books, "SC6 Lane End", StandVerdict.UP, OptionalDouble.of(0.8));
            looked(books, "SH6 Spur", StandVerdict.FAILED, OptionalDouble.of(0.5));
            looked(books, "OC1 Ford", StandVerdict.UP, OptionalDouble.empty());
        };

        Brief.WeekReport told = supposing(week, books -> new WeekDesk(office).report(books, MONDAY))
                .orElseThrow();
        Optional<Brief.WeekReport> tuesday = supposing(
                week, books -> new WeekDesk(office).report(books, MONDAY.plus(Duration.ofDays(1))));

        assertThat(told.post()).isEqualTo(new Brief.WeekReport.Post(6, 2, 2, 1));
        assertThat(told.seededHa()).isEqualTo(areaHa("MP6 Back Corner"));
        assertThat(told.stands()).isEqualTo(new Brief.WeekReport.Stands(1, 2, 0.65));
        assertThat(tuesday).isEmpty();
    }

    @Test
    void weekWithoutABriefHasNoReport() {
        Optional<Brief.WeekReport> told =
                supposing(books -> {}, books -> new WeekDesk(office).report(books, MONDAY));

        assertThat(told).isEmpty();
    }

    private static long put(Books books, String event, String at) {
        Instant created = Instant.parse(at);
        Outgoing.Key key = new Outgoing.Key(event, "yard@burroak.example");
        books.outbox()
                .put(new Outgoing(
                        key,
                        Outgoing.Channel.MAIL,
                        "Order",
                        "x".getBytes(StandardCharsets.UTF_8),
                        new Outgoing.Times(created, created, created.plus(Duration.ofHours(24)))));
        return books.outbox().since(Instant.EPOCH).stream()
                .filter(row -> row.message().key().equals(key))
                .findFirst()
                .orElseThrow()
                .id();
    }

    private static void sent(Books books, String event, String at) {
        books.outbox().markSent(put(books, event, at), Instant.parse(at), "250 taken");
    }

    private static void refused(Books books, String event, String at) {
        books.outbox()
                .markFailed(put(books, event, at), FailedTry.refused(Instant.parse(at), "550 no"));
    }

    private static void looked(
            Books books, String field, StandVerdict found, OptionalDouble chance) {
        books.stands()
                .add(new StandBook.StandCheck(
                        field,
                        found,
                        Optional.of("clover and turnip"),
                        new StandBook.Finding(
                                OptionalDouble.empty(), chance, Optional.empty(), Optional.empty()),
                        said("2026-07-09T15:00:00Z")));
    }

    private static List<String> questions(Consumer<Books> records) {
        return supposing(
                records,
                books -> new QuestionDesk(office)
                        .all(
                                books,
                                result(),
                                new SupplyDesk(office)
                                        .sheet(books, result().outlook().plan(), TODAY)));
    }

    private static String firstSeeded() {
        return result().outlook().plan().items().stream()
                .filter(item -> item.sowing().isPresent())
                .min((a, b) -> a.work().from().compareTo(b.work().from()))
                .orElseThrow()
                .place()
                .field();
    }

    @Test
    void soilOfTheFieldSeededFirstIsAskedForUntilSomebodyHasDug() {
        String asked = firstSeeded() + ": how is the soil at seed depth?";

        assertThat(questions(books -> {})).anySatisfy(q -> assertThat(q).startsWith(asked));
        assertThat(questions(books -> new SoilDesk(office)
                        .take(
                                books,
                                new SoilDesk.Said(
                                        firstSeeded(),
                                        Optional.of("moist"),
                                        Optional.empty(),
                                        "Dell"))))
                .noneSatisfy(q -> assertThat(q).startsWith(asked));
    }

    private static void rain(Books books, String source, double mm) {
        Window night =
                new Window(MONDAY.minus(Duration.ofHours(12)), MONDAY.minus(Duration.ofHours(1)));
        books.rain().add("North Forty", new RainObservation(night, mm, source, MONDAY), "Dell");
    }

    @Test
    void gaugeIsDoubtedWhereAnotherSourceIsFarFromIt() {
        assertThat(questions(books -> {
                    rain(books, "gauge", 25.4);
                    rain(books, "stage4", 2.54);
                }))
                .anySatisfy(q -> assertThat(q)
                        .startsWith("North Forty: the gauge says 1")
                        .contains("stage4 says 0.1", "Is the gauge right?"));
        assertThat(questions(books -> {
                    rain(books, "gauge", 25.4);
                    rain(books, "stage4", 20);
                }))
                .noneSatisfy(q -> assertThat(q).startsWith("North Forty: the gauge"));
    }
}
