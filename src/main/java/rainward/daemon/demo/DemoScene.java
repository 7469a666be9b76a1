package rainward.daemon.demo;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import rainward.cycle.CycleInput;
import rainward.daemon.office.Office;
import rainward.daemon.settings.Settings;
import rainward.farm.MappedField;
import rainward.farm.Mix;
import rainward.farm.Property;
import rainward.farm.Roster;
import rainward.farm.Survey;
import rainward.intake.ClimateTable;
import rainward.intake.FieldFile;
import rainward.intake.Intake;
import rainward.intake.KnownNames;
import rainward.intake.SharedTables;
import rainward.intake.TableFolder;
import rainward.intake.TextureClasses;
import rainward.replay.crew.Scene;

/** The demo's invented crew and fields, all of them untouched. */
public final class DemoScene {

    private DemoScene() {}

    /**
     * Crew and fields, to be laid around any place.
     *
     * @param traces of the weather in each round
     */
    public static Scene read(int traces) {
        Settings settings = fromFile(
                        "/config/demo.toml", ".toml", file -> Office.settings(file, Map.of()))
                .settings();
        TableFolder tables = TableFolder.onClassPath();
        String region = settings.farm().region();
        Map<String, Mix> mixes = new LinkedHashMap<>(new SharedTables(tables).mixes(region));
        settings.work().ownMixes().forEach(mix -> mixes.put(mix.name(), mix));
        Roster nowhere = roster(List.of(), mixes, settings);
        KnownNames known = KnownNames.of(
                nowhere,
                TextureClasses.of(tables),
                new KnownNames.UsualGround(
                        settings.soil().organicMatterPct(), settings.soil().slopeFraction()));
        Intake<Survey> intake =
                fromFile("/config/demo-fields.geojson", ".geojson", new FieldFile(known)::read);
        if (!(intake instanceof Intake.Accepted<Survey> accepted)) {
            throw new IllegalStateException("the demo's own fields cannot be read");
        }
        Survey survey = accepted.value();
        CycleInput.Draw draw = new CycleInput.Draw(
                new ClimateTable(tables).of(region),
                traces,
                settings.weather().traces().seed());
        return new Scene(
                roster(properties(survey), mixes, settings),
                survey.fields().stream().map(MappedField::field).toList(),
                new CycleInput.Rules(
                        draw,
                        settings.soil().workableShare(),
                        settings.order().prices(),
                        settings.window().rules(settings.farm().zone()),
                        settings.farm().units()));
    }

    private static Roster roster(
            List<Property> properties, Map<String, Mix> mixes, Settings settings) {
        return Roster.of(
                properties,
                List.copyOf(mixes.values()),
                settings.work().recipes(),
                settings.work().crew());
    }

    /** A stated gate is worth more than the middle of the fields. */
    private static List<Property> properties(Survey survey) {
        Map<String, Property> all = new LinkedHashMap<>();
        survey.middles().forEach(p -> all.put(p.name(), p));
        survey.gates().forEach(p -> all.put(p.name(), p));
        return new ArrayList<>(all.values());
    }

    private interface Reading<T> {
        T read(Path file);
    }

    private static <T> T fromFile(String resource, String ending, Reading<T> reading) {
        try {
            Path file = Files.createTempFile("rainward-demo", ending);
            try {
                Files.write(file, DemoFiles.bytes(resource));
                return reading.read(file);
            } finally {
                Files.deleteIfExists(file);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
