package rainward.brief.making;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import rainward.brief.Literal;
import rainward.brief.Orders;
import rainward.brief.Orders.FieldLine;
import rainward.brief.Orders.Hands;
import rainward.brief.Orders.Place;
import rainward.brief.Orders.Sown;
import rainward.brief.Orders.StageLine;
import rainward.cycle.Outlook;
import rainward.farm.Field;
import rainward.farm.Window;
import rainward.queue.problem.PlanItem;

/** The order of a plan, field by field. */
final class OrderBook {

    private final Outlook outlook;

    OrderBook(Outlook outlook) {
        this.outlook = outlook;
    }

    Orders of(Window day) {
        List<FieldLine> lines = byField().values().stream()
                .map(this::line)
                .sorted(Comparator.comparingInt(FieldLine::rank))
                .toList();
        return new Orders(
                lines.stream().filter(line -> workedIn(day, line)).toList(),
                lines.stream().filter(line -> !workedIn(day, line)).toList(),
                leftOut());
    }

    private static boolean workedIn(Window day, FieldLine line) {
        return line.stages().stream().anyMatch(stage -> stage.work().overlaps(day));
    }

    private Map<String, List<PlanItem>> byField() {
        return outlook.plan().items().stream()
                .collect(Collectors.groupingBy(
                        item -> item.place().field(), LinkedHashMap::new, Collectors.toList()));
    }

    private FieldLine line(List<PlanItem> items) {
        PlanItem first = items.get(0);
        String name = first.place().field();
        String because = outlook.field(name).map(f -> f.readiness().because()).orElse("");
        Optional<String> keptBack = outlook.plan().whyLeftOut(name);
        String reason = keptBack.orElse(because);
        return new FieldLine(
                first.rank(),
                place(name, first.place().property()),
                items.stream()
                        .sorted(Comparator.comparing(item -> item.work().from()))
                        .map(OrderBook::stage)
                        .toList(),
                sown(items),
                Literal.of(reason));
    }

    private Place place(String field, String property) {
        double areaHa = outlook.field(field).map(f -> f.item().field().areaHa()).orElse(0.0);
        return new Place(Literal.of(field), Literal.of(property), areaHa);
    }

    private static StageLine stage(PlanItem item) {
        return new StageLine(
                Literal.of(item.place().stage()),
                item.place().operation(),
                new Hands(
                        Literal.of(item.hands().machine()),
                        Literal.of(item.hands().person())),
                item.work(),
                item.drivingHours(),
                item.setting().toMinutes() / 60.0,
                item.shareFraction());
    }

    private Optional<Sown> sown(List<PlanItem> items) {
        return items.stream()
                .flatMap(item -> item.sowing().stream()
                        .map(s -> new Sown(
                                Literal.of(s.mix()),
                                s.chance(),
                                isFallBack(item.place().field(), s.mix()))))
                .findFirst();
    }

    boolean isFallBack(String field, String mix) {
        return outlook.field(field)
                .map(f -> !f.item().field().wish().mixes().get(0).equals(mix))
                .orElse(false);
    }

    /** A field that is made ready without being seeded stands in the order, and says so there. */
    private List<Orders.LeftOut> leftOut() {
        Set<String> worked = byField().keySet();
        return outlook.plan().leftOut().stream()
                .filter(left -> !worked.contains(left.field()))
                .map(left -> new Orders.LeftOut(
                        place(left.field(), property(left.field())), Literal.of(left.why())))
                .toList();
    }

    private String property(String field) {
        return outlook.field(field)
                .map(Outlook.FieldOutlook::item)
                .map(c -> c.field())
                .map(Field::property)
                .orElse("");
    }
}
