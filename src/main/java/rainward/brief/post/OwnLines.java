package rainward.brief.post;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import rainward.brief.Brief;
import rainward.brief.Brief.Ahead;
import rainward.brief.Brief.Footing;
import rainward.brief.Brief.Heading;
import rainward.brief.Brief.Kind;
import rainward.brief.Brief.Sky;
import rainward.brief.Orders;
import rainward.brief.Orders.FieldLine;
import rainward.farm.Window;

/**
 * The part of a brief that somebody needs who runs one machine: their stages, the rain where they
 * work, the cautions, and how old the forecast is.
 */
final class OwnLines {

    private OwnLines() {}

    static Brief of(Brief brief, Set<String> machines) {
        Orders own = own(brief, machines);
        List<String> properties = Stream.of(own.today(), own.later())
                .flatMap(List::stream)
                .map(line -> line.place().property())
                .toList();
        Sky sky = brief.sky();
        return new Brief(
                heading(brief.heading(), own),
                own,
                List.of(),
                new Sky(
                        sky.rain().stream()
                                .filter(panel -> properties.contains(panel.property()))
                                .toList(),
                        sky.windows(),
                        sky.alerts()),
                brief.ground().stream()
                        .filter(line -> properties.contains(line.property()))
                        .toList(),
                new Ahead(brief.ahead().load(), List.of(), brief.ahead().season()),
                brief.cautions(),
                footing(brief.footing()));
    }

    private static Orders own(Brief brief, Set<String> machines) {
        Window day = day(brief.heading());
        List<FieldLine> lines = Stream.of(brief.orders().today(), brief.orders().later())
                .flatMap(List::stream)
                .map(line -> own(line, machines))
                .filter(line -> !line.stages().isEmpty())
                .toList();
        return new Orders(
                lines.stream().filter(line -> workedIn(day, line)).toList(),
                lines.stream().filter(line -> !workedIn(day, line)).toList(),
                List.of());
    }

    private static FieldLine own(FieldLine line, Set<String> machines) {
        return new FieldLine(
                line.rank(),
                line.place(),
                line.stages().stream()
                        .filter(stage -> machines.contains(stage.hands().machine()))
                        .toList(),
                line.sown(),
                line.reason());
    }

    private static boolean workedIn(Window day, FieldLine line) {
        return line.stages().stream().anyMatch(stage -> stage.work().overlaps(day));
    }

    private static Window day(Heading heading) {
        return Window.ofDay(heading.day(), heading.zone());
    }

    /** A day of work for others may be an idle one for this machine. */
    private static Heading heading(Heading heading, Orders own) {
        Kind kind = heading.kind() == Kind.WORK && own.today().isEmpty()
                ? Kind.WORK_LATER
                : heading.kind();
        return new Heading(heading.farm(), heading.day(), heading.zone(), kind, heading.written());
    }

    private static Footing footing(Footing footing) {
        return new Footing(
                footing.forecasts(),
                footing.credits(),
                footing.warnings(),
                List.of(),
                List.of(),
                Optional.empty());
    }
}
