package rainward.brief.post;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import rainward.brief.Alert;
import rainward.brief.Brief;
import rainward.brief.Orders;
import rainward.brief.Orders.FieldLine;
import rainward.brief.Orders.StageLine;
import rainward.farm.Operation;

/** The lines of briefs and alerts for programs. */
final class Lines {

    private Lines() {}

    static List<Line> of(Brief brief) {
        return Stream.of(brief.orders().today(), brief.orders().later())
                .flatMap(List::stream)
                .flatMap(line -> line.stages().stream().map(stage -> work(line, stage)))
                .toList();
    }

    private static Line work(FieldLine line, StageLine stage) {
        Optional<Orders.Sown> sown = line.sown().filter(s -> stage.operation() == Operation.SEED);
        return new Line.Work(
                line.rank(),
                line.place().field(),
                line.place().property(),
                new Line.Task(
                        stage.stage(),
                        stage.hands().machine(),
                        stage.hands().person(),
                        sown.map(Orders.Sown::mix)),
                stage.work().from(),
                stage.work().to(),
                sown.map(s -> OptionalDouble.of(s.chance())).orElse(OptionalDouble.empty()));
    }

    static List<Line> of(Alert alert) {
        return alert.news() instanceof Alert.WindowNews news && news.step() != Alert.Step.CLOSED
                ? news.window().fits().stream()
                        .<Line>map(fit -> new Line.Fit(
                                fit.field(),
                                fit.plannedStart(),
                                fit.lastSafeStart(),
                                OptionalDouble.of(fit.chance())))
                        .toList()
                : List.of();
    }
}
