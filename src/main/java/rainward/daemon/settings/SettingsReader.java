package rainward.daemon.settings;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.toml.TomlMapper;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rainward.daemon.settings.text.KeyLines;
import rainward.farm.DayClock;
import rainward.farm.Mix;
import rainward.farm.Species;
import rainward.intake.InputTables;
import rainward.intake.SharedTables;
import rainward.intake.TableFolder;

/**
 * Reads the settings file whole, so that all its faults are told at once.
 *
 * @param environment where secrets may be
 * @param species by name, for mixes of the farm's own
 * @param regions that dates of sowing are known for
 */
public record SettingsReader(
        Map<String, String> environment, Map<String, Species> species, List<String> regions) {

    private static final long LARGEST_BYTES = 1 << 20;

    public SettingsReader {
        environment = Map.copyOf(environment);
        species = Map.copyOf(species);
        regions = List.copyOf(regions);
    }

    /** Reads a file; never throws because of what is in it. */
    public SettingsOutcome read(Path file) {
        try {
            if (Files.size(file) > LARGEST_BYTES) {
                return unusable(
                        file, 0, "is larger than 1 MB", "name the right file with --config");
            }
            return read(file, Files.readString(file));
        } catch (NoSuchFileException e) {
            return unusable(
                    file, 0, "is not there", "write one with setup, or name it with --config");
        } catch (CharacterCodingException e) {
            return unusable(file, 0, "is not UTF-8 text", "save it as UTF-8");
        } catch (IOException e) {
            return unusable(
                    file, 0, "cannot be read (" + e.getMessage() + ")", "check its permissions");
        }
    }

    private SettingsOutcome read(Path file, String text) {
        try {
            JsonNode root = new TomlMapper().readTree(text);
            Reading reading =
                    new Reading(file.toString(), KeyLines.of(text.lines().toList()));
            return outcome(reading, settings(reading, root, file));
        } catch (JacksonException e) {
            return unusable(
                    file,
                    line(e.getLocation()),
                    "is not TOML (" + e.getOriginalMessage() + ")",
                    "mend this line first; the others are read after that");
        }
    }

    /** What is wrong with a whole line is told at the start of the next one. */
    private static int line(@Nullable JsonLocation place) {
        if (place == null) {
            return 0;
        }
        return place.getColumnNr() <= 1 ? Math.max(1, place.getLineNr() - 1) : place.getLineNr();
    }

    private static SettingsOutcome outcome(Reading reading, Settings settings) {
        return reading.faults().isEmpty()
                ? new SettingsOutcome.Usable(settings, reading.warnings())
                : new SettingsOutcome.SettingsFaults(reading.faults());
    }

    private static SettingsOutcome unusable(Path file, int line, String found, String remedy) {
        return new SettingsOutcome.SettingsFaults(
                List.of(new Fault(file.toString(), line, "", found, remedy)));
    }

    /** Every key that the program knows; entries of lists are written {@code []}. */
    SortedSet<String> knownKeys(String text) throws JacksonException {
        Reading reading = new Reading("", KeyLines.of(text.lines().toList()));
        settings(reading, new TomlMapper().readTree(text), Path.of("settings.toml"));
        return reading.asked();
    }

    private Settings settings(Reading reading, JsonNode node, Path file) {
        Section root = new Section(reading, "", node);
        Settings.Farm farm = FarmReader.farm(root.table("farm"), regions);
        SecretReader secrets = new SecretReader(environment, file);
        Settings.Work work =
                new WorkReader(new DayClock(farm.zone(), farm.units()), species).work(root);
        Settings settings = new Settings(
                farm,
                new StoreReader(secrets).database(root),
                FarmReader.keeping(root.table("keep")),
                new WeatherReader(secrets).weather(root.table("weather")),
                FarmReader.soil(root.table("soil")),
                work,
                new InputReader(new InputTables(TableFolder.onClassPath()), species.keySet())
                        .inputs(root, work.crew().machines(), mixNames(work)),
                OrderReader.order(root.table("order")),
                OrderReader.alerts(root.table("window")),
                new PostReader(secrets, farm.units()).post(root, work.crew()),
                new BoardReader(file).board(root.table("board")));
        root.end();
        return settings;
    }

    private static List<String> mixNames(Settings.Work work) {
        SharedTables shared = new SharedTables(TableFolder.onClassPath());
        return Stream.concat(
                        work.ownMixes().stream().map(Mix::name),
                        shared.mixes(shared.regions().get(0)).keySet().stream())
                .distinct()
                .sorted()
                .toList();
    }
}
