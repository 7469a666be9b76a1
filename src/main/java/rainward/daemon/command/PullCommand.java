package rainward.daemon.command;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import rainward.daemon.office.AlertDesk;
import rainward.daemon.office.Office;
import rainward.daemon.office.PostDesk;
import rainward.daemon.office.Refusal;
import rainward.daemon.office.WeatherDesk;
import rainward.daemon.service.Rounds;
import rainward.weather.source.ForecastSeries;
import rainward.weather.source.PullOutcome;

/** Asks the weather services. */
@Command(
        name = "pull",
        description = {
            "Ask the weather services for the forecast of every property, for what fell and for",
            "public alerts, and keep it. News of an alert goes to those who get mail.",
            "",
            "Answers that are still fresh by the service's own word are not asked for again."
        })
public final class PullCommand extends OfficeCommand {

    /**
     * What a property got, as JSON shows it.
     *
     * @param property its name
     * @param source of the forecast in hand, if there is one
     * @param issuedAt by the service
     * @param fresh true where this pull brought it or confirmed it
     * @param warnings what went wrong or is missing
     * @param alerts public alerts that stand there
     */
    record Line(
            String property,
            Optional<String> source,
            Optional<OffsetDateTime> issuedAt,
            boolean fresh,
            List<String> warnings,
            List<String> alerts) {

        static Line of(WeatherDesk.PropertyPull pulled, Office office) {
            PullOutcome outcome = pulled.pull().outcome();
            Optional<ForecastSeries.Stamp> stamp = outcome.series().map(ForecastSeries::stamp);
            boolean failed = outcome instanceof PullOutcome.Failed;
            return new Line(
                    pulled.property(),
                    stamp.map(ForecastSeries.Stamp::source),
                    stamp.map(s -> s.issuedAt().atZone(office.zone()).toOffsetDateTime()),
                    !failed,
                    outcome instanceof PullOutcome.Failed f
                            ? List.of(f.words())
                            : outcome.series().map(ForecastSeries::warnings).orElse(List.of()),
                    AlertDesk.at(office, pulled.property()).stream()
                            .map(alert -> alert.message().event())
                            .toList());
        }
    }

    @Override
    protected int work(Office office) {
        WeatherDesk desk = new WeatherDesk(office);
        List<WeatherDesk.PropertyPull> pulls = desk.pullAll();
        // A person who is told here is not the only one: what is news goes into the outbox too.
        new Rounds(office, desk, new PostDesk(office)).alerts();
        List<Line> lines = pulls.stream().map(p -> Line.of(p, office)).toList();
        if (lines.isEmpty()) {
            throw Refusal.badInput("There is no property yet to ask the weather for: import fields"
                    + " with `rainward import FILE`.");
        }
        desk.pullObserved();
        show(lines, () -> text(lines));
        return lines.stream().anyMatch(Line::fresh) ? 0 : Refusal.BAD_WORLD;
    }

    private static String text(List<Line> lines) {
        return String.join(
                System.lineSeparator(), lines.stream().map(PullCommand::text).toList());
    }

    private static String text(Line line) {
        String forecast = line.source()
                .map(source -> source + ", issued "
                        + line.issuedAt().map(OffsetDateTime::toString).orElse("?"))
                .orElse("no forecast");
        String state = line.fresh() ? "" : " (kept from before)";
        String warnings =
                line.warnings().isEmpty() ? "" : "\n    " + String.join("\n    ", line.warnings());
        String alerts = line.alerts().stream()
                .map(event -> "\n    public alert: " + event)
                .collect(Collectors.joining());
        return line.property() + ": " + forecast + state + warnings + alerts;
    }
}
