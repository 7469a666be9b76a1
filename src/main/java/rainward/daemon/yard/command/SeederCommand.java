package rainward.daemon.yard.command;

import java.io.PrintWriter;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import rainward.daemon.command.Sheets;
import rainward.daemon.office.Refusal;
import rainward.daemon.settings.Written;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;
import rainward.input.seeder.AcreFraction;
import rainward.input.seeder.CatchStrip;

/** Sums for setting a seeder. */
@Command(
        name = "seeder",
        description = "Setting a seeder: where to start, what a catch gave, what the boxes say.",
        subcommands = {
            SeederBooks.Set.class,
            SeederCommand.Catch.class,
            SeederBooks.Weigh.class,
            SeederBooks.Check.class
        })
public final class SeederCommand implements Runnable {

    @Spec
    CommandSpec spec = CommandSpec.create();

    @Override
    public void run() {
        spec.commandLine().usage(spec.commandLine().getOut());
    }

    /** How far to drive for a catch test. */
    @Command(
            name = "catch",
            description = {
                "How far to drive, or turn at the wheel, so that the seed caught is that of a",
                "known small area; and how much should be caught.",
                "",
                "Keep hands away from turning augers and agitators; stop the engine before you",
                "reach in. Seed that was treated is handled as its label says."
            })
    public static final class Catch implements Callable<Integer> {

        private static final double MOST_WIDTH_M = 60;

        @Option(
                names = "--width",
                paramLabel = "WIDTH",
                required = true,
                description = "Working width that is caught: 15ft or 4.5m.")
        String width = "";

        @Option(
                names = "--fraction",
                paramLabel = "1/N",
                description = "Part of an acre: 1/20, 1/50. Else 1/20 where nothing is said.")
        String fraction = "1/20";

        @Option(
                names = "--rate",
                paramLabel = "RATE",
                description = "Seed rate wanted: \"25 lb/ac\" or \"28 kg/ha\".")
        @Nullable
        String rate;

        @Option(
                names = "--wheel",
                paramLabel = "LENGTH",
                description = "What the drive wheel rolls in one turn: 7.5ft or 2.3m.")
        @Nullable
        String wheel;

        @Option(names = "--json", description = "Print JSON.")
        boolean json;

        @Spec
        CommandSpec spec = CommandSpec.create();

        /** The sum, in the units that the width came in. */
        sealed interface Answer permits UsAnswer, MetricAnswer {}

        /** In US units. */
        record UsAnswer(
                double distanceFt,
                double widthFt,
                double areaAc,
                Optional<Double> catchLb,
                Optional<Double> wheelTurns)
                implements Answer {}

        /** In metric units. */
        record MetricAnswer(
                double distanceM,
                double widthM,
                double areaHa,
                Optional<Double> catchKg,
                Optional<Double> wheelTurns)
                implements Answer {}

        @Override
        public Integer call() {
            Written.Given across = given("--width", width, Quantity.WIDTH);
            if (across.inside() <= 0 || across.inside() > MOST_WIDTH_M) {
                throw Refusal.badInput("--width is '" + width + "': a seeder is more than nothing"
                        + " and at most " + across.units().width(MOST_WIDTH_M) + " wide.");
            }
            CatchStrip strip = strip(across.inside());
            Optional<Double> catchKg = Optional.ofNullable(rate)
                    .map(text -> strip.expectedKg(
                            given("--rate", text, Quantity.RATE).inside()));
            Optional<Double> turns =
                    Optional.ofNullable(wheel).map(text -> strip.turns(positive("--wheel", text)));
            Answer answer = across.units() == UnitSystem.METRIC
                    ? new MetricAnswer(
                            strip.distanceM(), strip.widthM(), strip.areaHa(), catchKg, turns)
                    : us(strip, catchKg, turns);
            PrintWriter out = spec.commandLine().getOut();
            out.println(json ? Sheets.json(answer) : text(strip, across.units(), catchKg, turns));
            return 0;
        }

        private CatchStrip strip(double widthM) {
            try {
                return AcreFraction.parse(fraction).strip(widthM);
            } catch (IllegalArgumentException e) {
                throw Refusal.badInput("--fraction: " + e.getMessage() + ".");
            }
        }

        private static UsAnswer us(
                CatchStrip strip, Optional<Double> catchKg, Optional<Double> turns) {
            UnitSystem us = UnitSystem.US_CUSTOMARY;
            return new UsAnswer(
                    us.shown(Quantity.WIDTH, strip.distanceM()),
                    us.shown(Quantity.WIDTH, strip.widthM()),
                    us.shown(Quantity.AREA, strip.areaHa()),
                    catchKg.map(kg -> us.shown(Quantity.MASS, kg)),
                    turns);
        }

        private String text(
                CatchStrip strip,
                UnitSystem units,
                Optional<Double> catchKg,
                Optional<Double> turns) {
            String distance = units.text(Quantity.WIDTH, strip.distanceM());
            return "Drive " + distance + " for " + fraction + " acre at "
                    + units.width(strip.widthM()) + "."
                    + turns.map(n -> String.format(
                                    Locale.US, " That is %.1f turns of the drive wheel.", n))
                            .orElse("")
                    + catchKg.map(kg -> " Catch " + units.text(Quantity.MASS, kg, 2) + " of seed.")
                            .orElse("");
        }

        private static double positive(String option, String text) {
            double inside = given(option, text, Quantity.WIDTH).inside();
            if (inside <= 0) {
                throw Refusal.badInput(option + " is '" + text + "', must be more than nothing.");
            }
            return inside;
        }

        private static Written.Given given(String option, String text, Quantity quantity) {
            Optional<Written.Given> given = Written.given(text, quantity);
            if (given.isPresent()) {
                return given.get();
            }
            throw Refusal.badInput(option + " is '" + text + "', must be a number with "
                    + UnitSystem.US_CUSTOMARY.symbol(quantity) + " or "
                    + UnitSystem.METRIC.symbol(quantity) + " behind it.");
        }
    }
}
