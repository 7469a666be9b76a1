package rainward.daemon.command;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.stream.Collectors;
import rainward.cycle.sheet.ReadySheet;
import rainward.daemon.office.Office;
import rainward.farm.DayClock;
import rainward.farm.UnitSystem;
import rainward.readiness.Figures;

/** The numbers behind one field's readiness, in words and units of the person. */
final class ReadyNumbers {

    private final DayClock clock;
    private final UnitSystem units;
    private final ReadySheet.Numbers numbers;

    ReadyNumbers(Office office, ReadySheet.Numbers numbers) {
        this.clock = office.dayClock();
        this.units = office.settings().farm().units();
        this.numbers = numbers;
    }

    String text() {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("next possible hour", when(numbers.nextSeedAt())));
        rows.add(List.of(
                "worth of a stand",
                percent(numbers.worth().now()) + " then, "
                        + percent(numbers.worth().best()) + " at the best hour"));
        rows.add(List.of("useful rain", rain()));
        rows.add(List.of("hard rain", percent(numbers.rain().hardChance())));
        rows.add(List.of("water at seed depth", water()));
        rows.add(List.of("heat", heat()));
        rows.add(List.of("up after", up()));
        rows.add(List.of("seed lost", losses()));
        rows.add(List.of("would change it most", most()));
        rows.add(List.of("", "Ranges leave out one case in ten at either end."));
        return Sheets.columns(rows);
    }

    private String rain() {
        ReadySheet.Rain rain = numbers.rain();
        return percent(rain.chance())
                + rain.amountMm().map(mm -> ", " + range(mm, units::rain)).orElse("")
                + between(rain.earliest(), rain.latest());
    }

    private String when(OffsetDateTime at) {
        return clock.dateTime(at.toInstant());
    }

    private String between(Optional<OffsetDateTime> from, Optional<OffsetDateTime> to) {
        return from.flatMap(first -> to.map(last -> ", from " + when(first) + " to " + when(last)))
                .orElse("");
    }

    private String water() {
        ReadySheet.Seedbed bed = numbers.seedbed();
        return range(bed.waterFraction(), ReadyNumbers::percent) + " of volume at "
                + units.depth(bed.depthCm());
    }

    private String heat() {
        return units.temp(numbers.seedbed().meanTempC()) + " at seed depth, surface up to "
                + units.temp(numbers.seedbed().hottestSurfaceC());
    }

    private String up() {
        return numbers.emergenceDays()
                .map(days -> range(days, d -> String.valueOf(Math.round(d))) + " days")
                .orElse("never, as things stand");
    }

    private String losses() {
        var losses = numbers.losses();
        return percent(losses.falseStartFraction()) + " false start, "
                + percent(losses.washOutFraction()) + " washed or sealed in, "
                + percent(losses.heatFraction()) + " heat; "
                + percent(losses.stillDryFraction()) + " still waiting in dry soil";
    }

    private String most() {
        return numbers.sensitivities().stream()
                .map(one -> one.factor() + " " + signed(one.gain()))
                .collect(Collectors.joining(", "));
    }

    private static String signed(double gain) {
        long points = Math.round(100 * gain);
        return points > 0 ? "+" + points : String.valueOf(points);
    }

    private static String range(Figures.Range range, DoubleFunction<String> shown) {
        return shown.apply(range.middle()) + " (" + shown.apply(range.low()) + " to "
                + shown.apply(range.high()) + ")";
    }

    private static String percent(double fraction) {
        return Math.round(100 * fraction) + " %";
    }
}
