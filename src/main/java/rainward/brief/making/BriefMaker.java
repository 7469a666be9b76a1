package rainward.brief.making;

import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import rainward.brief.Brief;
import rainward.brief.Brief.Ahead;
import rainward.brief.Brief.Footing;
import rainward.brief.Brief.Heading;
import rainward.brief.Brief.SeasonView;
import rainward.brief.Brief.Sky;
import rainward.brief.Brief.Written;
import rainward.brief.ForecastAge;
import rainward.brief.Literal;
import rainward.brief.LocalAlert;
import rainward.brief.Orders;
import rainward.brief.RainPanel;
import rainward.cycle.Outlook;
import rainward.cycle.RainPicture;
import rainward.farm.FieldCase;
import rainward.farm.FieldState;
import rainward.farm.Window;

/** Gathers what the brief says. */
public final class BriefMaker {

    /** A brief that is written so much after its hour is marked late. */
    static final Duration LATE_AFTER = Duration.ofMinutes(15);

    private final BriefInput input;
    private final Outlook outlook;
    private final Window day;

    private BriefMaker(BriefInput input) {
        this.input = input;
        this.outlook = input.outlook();
        this.day = Window.ofDay(input.day(), input.zone());
    }

    /** The brief of the day on which it was due. */
    public static Brief make(BriefInput input) {
        return new BriefMaker(input).brief();
    }

    /** The order of an outlook, with the work of one day apart from that of the days after. */
    public static Orders orders(Outlook outlook, Window day) {
        return new OrderBook(outlook).of(day);
    }

    private Brief brief() {
        Orders orders = new OrderBook(outlook).of(day);
        return new Brief(
                heading(orders),
                orders,
                input.last().map(last -> new Changes(last, outlook).all()).orElse(List.of()),
                sky(),
                Ground.of(outlook),
                ahead(),
                new DayCautions(day, input).all(),
                footing());
    }

    private Heading heading(Orders orders) {
        var due = input.occasion().dueAt();
        var at = input.occasion().writtenAt();
        boolean late = Duration.between(due, at).compareTo(LATE_AFTER) > 0;
        return new Heading(
                Literal.of(input.occasion().farm()),
                input.day(),
                input.zone(),
                DayKind.of(outlook, orders),
                new Written(due, at, late, input.last().map(last -> last.plan().asOf())));
    }

    private Sky sky() {
        return new Sky(
                new TreeMap<>(outlook.rain())
                        .entrySet().stream()
                                .map(e -> panel(e.getKey(), e.getValue()))
                                .toList(),
                outlook.windows().stream().map(Literal::of).toList(),
                input.skies().alerts().stream().map(LocalAlert::harmless).toList());
    }

    private RainPanel panel(String property, RainPicture picture) {
        List<RainPanel.Work> work = outlook.plan().items().stream()
                .filter(item -> item.place().property().equals(property))
                .map(item -> new RainPanel.Work(item.work(), item.place().operation()))
                .toList();
        return new RainPanel(Literal.of(property), picture.bars(), work);
    }

    private Ahead ahead() {
        LocalDate date = input.day();
        return new Ahead(
                input.books().load().stream()
                        .map(l -> new Brief.LoadLine(Literal.of(l.what()), Literal.of(l.amount())))
                        .toList(),
                input.books().standChecks().stream()
                        .filter(check -> !check.lookOn().isAfter(date))
                        .sorted(Comparator.comparing(Brief.StandCheck::lookOn))
                        .map(c -> new Brief.StandCheck(
                                Literal.of(c.field()),
                                Literal.of(c.sown()),
                                c.seededOn(),
                                c.lookOn(),
                                c.why()))
                        .toList(),
                season());
    }

    private SeasonView season() {
        OrderBook book = new OrderBook(outlook);
        double lateHa = outlook.plan().items().stream()
                .filter(item -> item.sowing()
                        .filter(s -> book.isFallBack(item.place().field(), s.mix()))
                        .isPresent())
                .map(item -> item.place().field())
                .distinct()
                .flatMap(field -> outlook.field(field).stream())
                .mapToDouble(f -> f.item().field().areaHa())
                .sum();
        return new SeasonView(
                areaHa(FieldState.SEEDED, FieldState.UP),
                areaHa(FieldState.PENDING, FieldState.IN_WORK, FieldState.FAILED),
                lateHa,
                input.books().goal());
    }

    private double areaHa(FieldState... states) {
        return outlook.fields().stream()
                .map(Outlook.FieldOutlook::item)
                .filter(c -> List.of(states).contains(c.status().state()))
                .map(FieldCase::field)
                .mapToDouble(f -> f.areaHa())
                .sum();
    }

    private Footing footing() {
        return new Footing(
                ages(),
                credits(),
                input.skies().warnings().stream().map(Literal::of).toList(),
                new Questions(input).all(),
                input.books().undelivered().stream()
                        .map(u -> new Brief.Undelivered(
                                Literal.of(u.recipient()),
                                Literal.of(u.subject()),
                                Literal.of(u.why())))
                        .toList(),
                input.books().week());
    }

    private List<ForecastAge> ages() {
        return outlook.forecasts().entrySet().stream()
                .map(e -> new ForecastAge(
                        Literal.of(e.getKey()),
                        Literal.of(e.getValue().source()),
                        e.getValue().issuedAt(),
                        Duration.between(
                                e.getValue().issuedAt(), input.occasion().writtenAt())))
                .sorted(Comparator.comparing(ForecastAge::issuedAt)
                        .thenComparing(ForecastAge::property))
                .toList();
    }

    private List<String> credits() {
        Map<String, String> known = input.skies().credits();
        List<String> credits = new ArrayList<>();
        new TreeSet<>(outlook.forecasts().values().stream().map(s -> s.source()).toList())
                .forEach(source -> credits.add(Literal.of(known.getOrDefault(source, source))));
        return credits;
    }
}
