package rainward.daemon.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import rainward.daemon.office.Refusal;
import rainward.feed.recorded.RecordedFeeds;
import rainward.intake.BadTableException;
import rainward.intake.StationFolder;
import rainward.soil.verify.SoilReport;
import rainward.soil.verify.SoilVerification;

/** Holds parts of the program against data that others measured or recorded. */
@Command(
        name = "verify",
        description = "Hold parts of the program against measured or recorded data of your own.",
        subcommands = {VerifyCommand.Soil.class, VerifyCommand.Feed.class, VerifyWeek.class})
public final class VerifyCommand implements Runnable {

    @Spec
    CommandSpec spec = CommandSpec.create();

    @Override
    public void run() {
        spec.commandLine().usage(spec.commandLine().getOut());
    }

    /** What both share: a folder of data, and a way of printing. */
    abstract static class Trial implements Callable<Integer> {

        @Option(
                names = "--data",
                paramLabel = "DIR",
                required = true,
                description = "The folder that holds the data.")
        Path data = Path.of("");

        @Option(names = "--json", description = "Print JSON.")
        boolean json;

        @Spec
        CommandSpec spec = CommandSpec.create();

        PrintWriter out() {
            return spec.commandLine().getOut();
        }

        void mustBeThere() {
            if (!Files.isDirectory(data)) {
                throw Refusal.badInput(
                        data + " is no folder: name one that holds the data with --data.");
            }
        }
    }

    /** Runs the soil column at stations with sensors. */
    @Command(
            name = "soil",
            description = {
                "Run the soil column at every station of a folder and compare it with the sensors.",
                "",
                "Station files are daily CSV in the form of the US Climate Reference Network, or",
                "half hours of the NOAA land-surface test case (*.dat), taken by the day. The",
                "column sees the weather of the file, one loam and short grass for all, never the",
                "sensor. Figures are of May to September at 5 cm: water in m3/m3, temperature in C.",
                "",
                "Kept: ubRMSE where the sensor's value of the season's start, of a week ago or of",
                "yesterday stands for today. Told day: yesterday's value and the column's change."
            })
    public static final class Soil extends Trial {

        @Override
        public Integer call() {
            mustBeThere();
            SoilReport report = report();
            out().println(json ? Sheets.json(report) : text(report));
            return 0;
        }

        private SoilReport report() {
            try {
                return SoilVerification.of(new StationFolder(data).stations());
            } catch (BadTableException | IllegalArgumentException e) {
                throw Refusal.badInput(data + ": " + e.getMessage() + ".");
            }
        }

        private static String text(SoilReport report) {
            List<List<String>> rows = new ArrayList<>();
            rows.add(List.of(
                    "days",
                    "r",
                    "ubRMSE",
                    "bias",
                    "bucket r",
                    "bucket ubRMSE",
                    "start kept",
                    "week kept",
                    "day kept",
                    "told day",
                    "soil temp",
                    "station"));
            report.stations().forEach(figures -> rows.add(row(figures)));
            rows.add(row(report.median()));
            SoilReport.Wetting wetting = report.wetting();
            return Sheets.columns(rows)
                    + System.lineSeparator()
                    + String.format(
                            Locale.US,
                            "Rains of 10 mm or more after 4 dry days: %d; wetted the sensor in"
                                    + " %.0f %%, the column in %.0f %%.",
                            wetting.events(),
                            100 * wetting.measuredShare(),
                            100 * wetting.modelShare());
        }

        private static List<String> row(SoilReport.Figures f) {
            return List.of(
                    String.valueOf(f.days()),
                    number("%.2f", f.r()),
                    number("%.3f", f.ubRmse()),
                    number("%+.3f", f.bias()),
                    number("%.2f", f.bucketR()),
                    number("%.3f", f.bucketUbRmse()),
                    number("%.3f", f.told().startPersistenceUbRmse()),
                    number("%.3f", f.persistenceUbRmse()),
                    number("%.3f", f.told().dayPersistenceUbRmse()),
                    number("%.3f", f.told().dayUbRmse()),
                    number("%.1f", f.soilTempRmseC()),
                    f.station());
        }

        private static String number(String form, double value) {
            return Double.isNaN(value) ? "-" : String.format(Locale.US, form, value);
        }
    }

    /** Runs recorded answers through the real clients. */
    @Command(
            name = "feed",
            description = {
                "Read recorded answers of weather services through the real clients.",
                "",
                "They lie below nws, met-norway and open-meteo in the folder. An error is as",
                "expected where it is read as the error it is, a broken part where it is named and",
                "left out. Nothing outside this machine is asked.",
                "Exit code 1: something did not come out as expected."
            })
    public static final class Feed extends Trial {

        @Override
        public Integer call() {
            mustBeThere();
            RecordedFeeds.Report report = report();
            if (report.responses() == 0) {
                throw Refusal.badInput(data + " holds no recorded answer: they lie in folders"
                        + " called nws, met-norway and open-meteo.");
            }
            out().println(json ? Sheets.json(report) : text(report));
            return report.asExpected() == report.responses() ? 0 : Refusal.BAD_WORLD;
        }

        private RecordedFeeds.Report report() {
            try {
                return RecordedFeeds.verify(data);
            } catch (IOException e) {
                throw Refusal.badInput(data + " cannot be read: " + e.getMessage() + ".");
            }
        }

        private static String text(RecordedFeeds.Report report) {
            List<List<String>> rows = report.findings().stream()
                    .map(f -> List.of(f.source(), f.file(), f.what()))
                    .toList();
            return (rows.isEmpty() ? "" : Sheets.columns(rows) + System.lineSeparator())
                    + report.asExpected() + " of " + report.responses()
                    + " answers came out as expected.";
        }
    }
}
