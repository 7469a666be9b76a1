package rainward.daemon.settings;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import rainward.farm.NearestName;
import rainward.farm.UnitSystem;

/** The farm itself, what is kept, the ground and the page. */
final class FarmReader {

    private static final Duration SOME_DAYS = Duration.ofDays(30);
    private static final Duration TEN_YEARS = Duration.ofDays(3660);
    private static final String USUAL_BACKUPS = "backups";

    private FarmReader() {}

    /** The words of the file for systems of units. */
    enum Units {
        US,
        METRIC
    }

    static Settings.Farm farm(Section farm, List<String> regions) {
        UnitSystem units = units(farm.choice("units", Units.class));
        farm.reading().units(units);
        Settings.Farm read =
                new Settings.Farm(farm.name("name"), zone(farm), units, region(farm, regions));
        farm.end();
        return read;
    }

    static UnitSystem units(Units word) {
        return word == Units.US ? UnitSystem.US_CUSTOMARY : UnitSystem.METRIC;
    }

    private static ZoneId zone(Section farm) {
        String remedy = "must be a zone of the tz database, for instance \"America/Detroit\"";
        String name = farm.text("zone", remedy);
        try {
            return ZoneId.of(name);
        } catch (DateTimeException e) {
            if (!name.equals(Section.NAMELESS)) {
                farm.wrong(
                        "zone",
                        NearestName.of(name, ZoneId.getAvailableZoneIds())
                                .map(near ->
                                        "there is no such zone, the nearest is \"" + near + "\"")
                                .orElse(remedy));
            }
            return ZoneOffset.UTC;
        }
    }

    private static String region(Section farm, List<String> regions) {
        String region = farm.name("region");
        if (!region.equals(Section.NAMELESS) && !regions.contains(region)) {
            farm.wrong("region", "must be one of " + String.join(", ", regions));
        }
        return region;
    }

    static Settings.Keeping keeping(Section keep) {
        Bounds.Span bounds = Bounds.Span.usually(Duration.ofDays(400), SOME_DAYS, TEN_YEARS);
        Settings.Keeping read = new Settings.Keeping(
                keep.span("forecasts", bounds),
                keep.span("mail", bounds),
                (int) keep.whole("backups", new Bounds.Whole(14, 2, 400)),
                folder(keep));
        keep.end();
        return read;
    }

    private static Path folder(Section keep) {
        String remedy = "must be the path of a folder, for instance \"E:/rainward\"";
        String text = keep.maybeText("backup_folder", remedy).orElse(USUAL_BACKUPS);
        try {
            return Path.of(text);
        } catch (InvalidPathException e) {
            keep.wrong("backup_folder", remedy);
            return Path.of(USUAL_BACKUPS);
        }
    }

    static Settings.Soil soil(Section soil) {
        Settings.Soil read = new Settings.Soil(
                soil.number("organic_matter_percent", Bounds.Real.usually(2.5, 0.1, 8)),
                soil.share("slope", Bounds.Real.usually(0.02, 0, 0.6)),
                soil.span(
                        "run_up",
                        Bounds.Span.usually(
                                Duration.ofDays(60), Duration.ofDays(7), Duration.ofDays(366))),
                soil.share("workable_share", Bounds.Real.usually(0.6, 0.05, 0.99)),
                soil.flag("ask_survey", false));
        soil.end();
        return read;
    }
}
