package rainward.daemon.office;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import rainward.brief.Brief;
import rainward.brief.making.BriefInput;
import rainward.cycle.Cycle;
import rainward.daemon.yard.SupplyDesk;
import rainward.daemon.yard.season.SeasonDesk;
import rainward.input.check.CheckDay;
import rainward.input.load.LoadSheet;
import rainward.store.Books;
import rainward.weather.sky.HourlyAir;
import rainward.weather.source.Credits;
import rainward.weather.source.ForecastSeries;

/** Where all is gathered that a brief is made of. */
final class BriefDesk {

    static final String LAST_BRIEF = "last brief";

    private final Office office;

    BriefDesk(Office office) {
        this.office = office;
    }

    /**
     * The occasion of a brief.
     *
     * @param dueAt when it was to go out
     * @param checks of stands, the first to look at first
     */
    record Occasion(Instant dueAt, List<Brief.StandCheck> checks) {
        Occasion {
            checks = List.copyOf(checks);
        }
    }

    /**
     * Reckons the stand checks. It runs the soil under every seeded field, so it is asked for
     * before the transaction in which a brief is written, while others may still write.
     */
    Occasion occasion(Cycle.Result result, Instant dueAt) {
        return new Occasion(
                dueAt,
                office.store().read(books -> standChecks(books, result.outlook().asOf())));
    }

    /**
     * What a brief is made of.
     *
     * @param books of the transaction that it is written in
     * @param result of the round it tells of
     * @param occasion when it was to go out, and what was reckoned for it beforehand
     */
    BriefInput input(Books books, Cycle.Result result, Occasion occasion) {
        Instant dueAt = occasion.dueAt();
        Instant now = result.outlook().asOf();
        LocalDate day = LocalDate.ofInstant(dueAt, office.zone());
        LoadSheet sheet = new SupplyDesk(office).sheet(books, result.outlook().plan(), day);
        return new BriefInput(
                result.outlook(),
                office.roster(),
                new BriefInput.Occasion(office.settings().farm().name(), dueAt, now),
                books.lastKnown().find(LAST_BRIEF, BriefInput.LastBrief.class),
                skies(books, result),
                new BriefInput.Books(
                        SupplyDesk.lines(sheet, office.settings().farm().units()),
                        occasion.checks(),
                        new SeasonDesk(office)
                                .view(books, result.outlook().plan())
                                .goal(),
                        new QuestionDesk(office).all(books, result, sheet),
                        undelivered(books, now),
                        new WeekDesk(office).report(books, dueAt)));
    }

    private BriefInput.Skies skies(Books books, Cycle.Result result) {
        Map<String, ForecastSeries> inHand = WeatherDesk.inHand(books);
        Map<String, HourlyAir> air = new TreeMap<>();
        inHand.forEach((property, forecast) -> air.put(property, forecast.hourly()));
        List<String> warnings =
                new ArrayList<>(WeatherDesk.words(books, inHand.values(), office.dayClock()));
        result.outlook().rain().values().stream()
                .flatMap(rain -> rain.basis().words().stream())
                .map(words -> LocalWords.in(office.dayClock(), words))
                .distinct()
                .filter(words -> !warnings.contains(words))
                .forEach(warnings::add);
        return new BriefInput.Skies(
                air, AlertDesk.standing(books), credits(inHand.values()), warnings);
    }

    private static Map<String, String> credits(Collection<ForecastSeries> inHand) {
        Map<String, String> credits = new TreeMap<>();
        inHand.stream()
                .map(forecast -> forecast.stamp().source())
                .forEach(source ->
                        Credits.of(source).ifPresent(words -> credits.put(source, words)));
        return credits;
    }

    private List<Brief.StandCheck> standChecks(Books books, Instant now) {
        return new StandChecks(office)
                .all(books, now).stream()
                        .map(check -> new Brief.StandCheck(
                                check.item().field().name(),
                                check.item().mix(),
                                check.day().sownOn(),
                                check.due(),
                                why(check.day().reason())))
                        .toList();
    }

    private static Brief.StandCheck.Why why(CheckDay.Reason reason) {
        return switch (reason) {
            case SHOULD_SHOW -> Brief.StandCheck.Why.SHOULD_SHOW;
            case TAKEN_FOR_LOST -> Brief.StandCheck.Why.TAKEN_FOR_LOST;
            case TIME_IS_OVER -> Brief.StandCheck.Why.TIME_IS_OVER;
        };
    }

    private static List<Brief.Undelivered> undelivered(Books books, Instant now) {
        return books.outbox().since(now.minus(Duration.ofDays(2))).stream()
                .filter(row -> switch (row.progress().state()) {
                    case REFUSED, GIVEN_UP -> true;
                    case WAITING, SENT, DROPPED -> false;
                })
                .map(row -> new Brief.Undelivered(
                        row.message().key().recipient(),
                        row.message().subject(),
                        row.progress().lastWords()))
                .toList();
    }
}
