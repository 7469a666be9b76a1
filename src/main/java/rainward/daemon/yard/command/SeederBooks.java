package rainward.daemon.yard.command;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rainward.daemon.command.OfficeCommand;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.daemon.settings.Spelled;
import rainward.daemon.yard.SeederDesk;
import rainward.daemon.yard.Typed;
import rainward.farm.Field;
import rainward.farm.FieldCase;
import rainward.farm.FieldStatus;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;
import rainward.input.seeder.AcreFraction;
import rainward.input.seeder.BoxCheck;
import rainward.input.seeder.CatchStrip;
import rainward.input.seeder.CatchTest;
import rainward.input.seeder.SeedSize;
import rainward.input.seeder.StartingSetting;

/** Commands about a seeder that read or write the ledger. */
abstract class SeederBooks extends OfficeCommand {

    @Parameters(
            index = "0",
            paramLabel = "SEEDER",
            description = "The seeder, or the beginning of its name.")
    String seeder = "";

    @Option(
            names = "--rate",
            paramLabel = "RATE",
            description = "Wanted out of the bag: \"5 lb/ac\"; else that of the mix by its tags.")
    @Nullable
    String rate;

    @Option(names = "--by", paramLabel = "NAME", description = "Who says so.")
    String by = "office";

    final Optional<Double> stated(Office office) {
        return Optional.ofNullable(rate)
                .map(text -> Typed.positive("--rate", text, Quantity.RATE, units(office)));
    }

    static UnitSystem units(Office office) {
        return office.settings().farm().units();
    }

    static String setting(double index) {
        return String.format(Locale.ROOT, "%.1f", index);
    }

    static double shown(double value) {
        return Math.round(100 * value) / 100.0;
    }

    /** The setting to start from. */
    @Command(
            name = "set",
            description = {
                "The setting to start from for a mix: from the latest record of this mix in this",
                "seeder, else of the mix whose largest seed is nearest, and how sure that is."
            })
    public static final class Set extends SeederBooks {

        @Parameters(index = "1", paramLabel = "MIX", description = "The mix.")
        String mix = "";

        /**
         * The answer as JSON shows it.
         *
         * @param setting on the seeder's own scale; empty where nothing is on record
         */
        record Answer(
                String seeder,
                String mix,
                double rate,
                String unit,
                OptionalDouble setting,
                String sureness,
                String words) {}

        @Override
        protected int work(Office office) {
            SeederDesk desk = new SeederDesk(office);
            SeederDesk.Job job =
                    office.store().read(books -> desk.job(books, seeder, mix, stated(office)));
            Optional<StartingSetting> start = office.store().read(books -> desk.start(books, job));
            String rateWords = units(office).rate(job.rateKgPerHa());
            String words = start.map(s -> job.seeder() + ", " + job.mix().name() + " at "
                            + rateWords + ": start at setting " + setting(s.settingIndex()) + ", "
                            + s.sureness().words() + " (" + s.from().seed().mix() + " gave "
                            + units(office).rate(s.from().rateKgPerHa()) + " at "
                            + setting(s.from().settingIndex()) + ").")
                    .orElseGet(() -> StartingSetting.gap(job.seeder(), SeedSize.of(job.mix()))
                                    .text()
                            + "; wanted are " + rateWords + ".");
            show(
                    new Answer(
                            job.seeder(),
                            job.mix().name(),
                            shown(units(office).shown(Quantity.RATE, job.rateKgPerHa())),
                            units(office).symbol(Quantity.RATE),
                            start.map(s -> OptionalDouble.of(shown(s.settingIndex())))
                                    .orElse(OptionalDouble.empty()),
                            start.map(s -> s.sureness().name().toLowerCase(Locale.ROOT))
                                    .orElse("no record"),
                            words),
                    () -> words);
            return 0;
        }
    }

    /** What a catch test gave. */
    @Command(
            name = "weigh",
            description = {
                "Write down what was caught at a setting: the true rate, the factor to the target,",
                "and the setting that the catch asks for. It is kept for this seeder and mix.",
                "",
                "Stop the engine before you reach in. Treated seed is handled as its label says."
            })
    public static final class Weigh extends SeederBooks {

        private static final Pattern SHARE = Pattern.compile("(\\d+)/(\\d+)");

        @Parameters(index = "1", paramLabel = "MIX", description = "The mix.")
        String mix = "";

        @Option(names = "--setting", required = true, description = "The setting in use.")
        double setting;

        @Option(names = "--caught", required = true, description = "Seed caught: 0.31lb or 140g.")
        String caught = "";

        @Option(names = "--width", required = true, description = "Working width: 12ft.")
        String width = "";

        @Option(names = "--distance", description = "Driven, or turned at the wheel: 150ft.")
        @Nullable
        String distance;

        @Option(names = "--fraction", description = "Else part of an acre: 1/20.")
        String fraction = "1/20";

        @Option(names = "--turns", description = "Else turns of the drive wheel, with --wheel.")
        @Nullable
        Double turns;

        @Option(names = "--wheel", description = "What the wheel rolls in one turn: 7.5ft.")
        @Nullable
        String wheel;

        @Option(names = "--outlets", description = "Outlets caught of all: 4/24; else all.")
        @Nullable
        String outlets;

        /** The answer as JSON shows it. */
        record Answer(
                String seeder,
                String mix,
                double trueRate,
                double wantedRate,
                String unit,
                double factor,
                double correctedSetting,
                String words) {}

        @Override
        protected int work(Office office) {
            SeederDesk desk = new SeederDesk(office);
            if (!(setting > 0)) {
                throw Refusal.badInput("--setting is " + setting + ": it must be above 0.");
            }
            SeederDesk.Job job =
                    office.store().read(books -> desk.job(books, seeder, mix, stated(office)));
            CatchTest test = new CatchTest(
                    strip(office), of(), Grams.massKg("--caught", caught, units(office)));
            if (test.caughtKg() <= 0) {
                throw Refusal.badInput("--caught is '" + caught
                        + "': nothing came; look for a shut or plugged outlet.");
            }
            desk.weighed(job, setting, test, desk.now(by));
            Answer answer = answer(office, job, test);
            show(answer, answer::words);
            return 0;
        }

        private Answer answer(Office office, SeederDesk.Job job, CatchTest test) {
            UnitSystem units = units(office);
            double factor = test.factorTo(job.rateKgPerHa());
            String words = job.seeder() + ", " + job.mix().name() + " at setting "
                    + setting(setting) + ": " + units.rate(test.rateKgPerHa()) + " came, "
                    + units.rate(job.rateKgPerHa()) + " are wanted; times "
                    + String.format(Locale.ROOT, "%.2f", factor) + " is setting "
                    + setting(setting * factor) + ". Set it and catch again.";
            return new Answer(
                    job.seeder(),
                    job.mix().name(),
                    shown(units.shown(Quantity.RATE, test.rateKgPerHa())),
                    shown(units.shown(Quantity.RATE, job.rateKgPerHa())),
                    units.symbol(Quantity.RATE),
                    shown(factor),
                    shown(setting * factor),
                    words);
        }

        private CatchStrip strip(Office office) {
            double widthM = Typed.positive("--width", width, Quantity.WIDTH, units(office));
            if (distance != null) {
                return new CatchStrip(
                        widthM,
                        Typed.positive("--distance", distance, Quantity.WIDTH, units(office)));
            }
            if (turns != null) {
                if (wheel == null || !(turns > 0)) {
                    throw Refusal.badInput("--turns needs a number above 0, and --wheel beside"
                            + " it: what the wheel rolls in one turn.");
                }
                return CatchStrip.ofTurns(
                        widthM,
                        turns,
                        Typed.positive("--wheel", wheel, Quantity.WIDTH, units(office)));
            }
            try {
                return AcreFraction.parse(fraction).strip(widthM);
            } catch (IllegalArgumentException e) {
                throw Refusal.badInput("--fraction: " + e.getMessage() + ".");
            }
        }

        private CatchTest.Outlets of() {
            if (outlets == null) {
                return CatchTest.Outlets.ALL;
            }
            Matcher share = SHARE.matcher(outlets.strip());
            try {
                if (share.matches()) {
                    return new CatchTest.Outlets(
                            Integer.parseInt(share.group(1)), Integer.parseInt(share.group(2)));
                }
            } catch (IllegalArgumentException e) {
                // Told below, with what would be right.
            }
            throw Refusal.badInput("--outlets is '" + outlets
                    + "': write how many were caught of how many there are, 4/24.");
        }
    }

    /** A look into the boxes. */
    @Command(
            name = "check",
            description = {
                "A look into the boxes at any acre: the true rate so far, the corrected setting,",
                "and whether the seed at hand will finish the field."
            })
    public static final class Check extends SeederBooks {

        @Parameters(index = "1", paramLabel = "FIELD", description = "Where it is at work.")
        String field = "";

        @Option(names = "--sown", required = true, description = "Worked since filling: 2.1ac.")
        String sown = "";

        @Option(names = "--filled", required = true, description = "Seed put in, with what was in.")
        String filled = "";

        @Option(names = "--left", required = true, description = "Seed in the boxes now.")
        String left = "";

        @Option(names = "--setting", required = true, description = "The setting in use.")
        double setting;

        @Option(names = "--mix", description = "In the boxes; else the first wish of the field.")
        @Nullable
        String mix;

        @Option(names = "--bags", description = "Seed at hand outside the boxes; else none.")
        String bags = "0";

        @Option(names = "--reading", description = "How far --left may be off; else 1 lb.")
        String reading = "1lb";

        /** The answer as JSON shows it. */
        record Answer(
                String field,
                String mix,
                String verdict,
                double expectedLeft,
                double left,
                String massUnit,
                double trueRate,
                double wantedRate,
                String rateUnit,
                double correctedSetting,
                double lackingAsSet,
                double lackingAtTarget,
                String words) {}

        @Override
        protected int work(Office office) {
            SeederDesk desk = new SeederDesk(office);
            Field where = desk.field(field);
            SeederDesk.Job job = office.store()
                    .read(books -> desk.job(
                            books,
                            seeder,
                            Optional.ofNullable(mix)
                                    .orElseGet(() ->
                                            wanted(where, books.journal().statusOf(where.name()))),
                            stated(office)));
            BoxCheck check = check(office, where, job);
            desk.looked(job, where.name(), check, desk.now(by));
            Answer answer = answer(office, where, job, check);
            show(answer, answer::words);
            return 0;
        }

        private static String wanted(Field field, FieldStatus status) {
            return new FieldCase(field, status).mix();
        }

        private BoxCheck check(Office office, Field where, SeederDesk.Job job) {
            UnitSystem units = units(office);
            double sownHa = Typed.positive("--sown", sown, Quantity.AREA, units);
            double filledKg = Typed.positive("--filled", filled, Quantity.MASS, units);
            double leftKg = Typed.amount("--left", left, Quantity.MASS, units);
            if (leftKg > filledKg) {
                throw Refusal.badInput("--left is '" + left + "', more than the " + filled
                        + " put in; weigh or read again.");
            }
            if (!(setting > 0)) {
                throw Refusal.badInput("--setting is " + setting + ": it must be above 0.");
            }
            return new BoxCheck(
                    new BoxCheck.Target(
                            job.rateKgPerHa(),
                            setting,
                            Math.max(0, where.areaHa() - sownHa),
                            Typed.amount("--bags", bags, Quantity.MASS, units)),
                    filledKg,
                    sownHa,
                    leftKg,
                    Typed.amount("--reading", reading, Quantity.MASS, units));
        }

        private Answer answer(Office office, Field where, SeederDesk.Job job, BoxCheck check) {
            UnitSystem units = units(office);
            String expected = check.expectedLeftKg() < 0
                    ? "the boxes should have run empty"
                    : units.mass(check.expectedLeftKg()) + " should be left";
            String rates = units.rate(check.trueRateKgPerHa()) + " went out, "
                    + units.rate(job.rateKgPerHa()) + " are wanted";
            String corrected = check.correctedSetting() == setting
                    ? ""
                    : " Set " + setting(check.correctedSetting()) + " instead of "
                            + setting(setting) + ".";
            String words = where.name() + ": " + units.mass(check.leftKg()) + " left, " + expected
                    + "; " + rates + ": " + check.verdict().words() + "." + corrected + " "
                    + finish(units, check);
            return new Answer(
                    where.name(),
                    job.mix().name(),
                    Spelled.spaced(check.verdict()),
                    shown(units.shown(Quantity.MASS, check.expectedLeftKg())),
                    shown(units.shown(Quantity.MASS, check.leftKg())),
                    units.symbol(Quantity.MASS),
                    shown(units.shown(Quantity.RATE, check.trueRateKgPerHa())),
                    shown(units.shown(Quantity.RATE, job.rateKgPerHa())),
                    units.symbol(Quantity.RATE),
                    shown(check.correctedSetting()),
                    shown(units.shown(Quantity.MASS, check.shortAsSetKg())),
                    shown(units.shown(Quantity.MASS, check.shortAtTargetKg())),
                    words);
        }

        private static String finish(UnitSystem units, BoxCheck check) {
            String rest = units.area(check.target().toGoHa()) + " to go";
            if (check.shortAsSetKg() <= 0) {
                return "The seed finishes the field (" + rest + ").";
            }
            return check.shortAtTargetKg() <= 0
                    ? "As it is set " + units.mass(check.shortAsSetKg())
                            + " will be missing at the end; at the right setting it finishes ("
                            + rest + ")."
                    : "Even at the right setting " + units.mass(check.shortAtTargetKg())
                            + " will be missing (" + rest + "): fetch it.";
        }
    }
}
