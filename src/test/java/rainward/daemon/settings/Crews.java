package rainward.daemon.settings;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import rainward.farm.Species;

/** Settings files of invented crews, and what is known beside them. */
final class Crews {

    static final Path USABLE = Path.of("src/test/resources/settings/usable.toml");

    static final Path EXAMPLE = Path.of("config/rainward.toml");

    private Crews() {}

    static SettingsReader reader() {
        return reader(Map.of());
    }

    static SettingsReader reader(Map<String, String> environment) {
        Map<String, Species> species = new LinkedHashMap<>();
        for (String name : List.of("turnip", "rape", "rye")) {
            species.put(name, species(name));
        }
        return new SettingsReader(
                environment, species, List.of("southern michigan", "northern ohio"));
    }

    private static Species species(String name) {
        return new Species(
                name,
                new Species.Cardinal(2, 27, 42, 55),
                14,
                -0.95,
                0.12,
                0.95,
                new Species.SeedlingGrowth(25, 8, 3),
                400_000);
    }

    static List<String> faults(Path file) {
        SettingsOutcome outcome = reader().read(file);
        return outcome instanceof SettingsOutcome.SettingsFaults faults
                ? faults.faults().stream().map(Fault::words).toList()
                : List.of();
    }

    static Settings usable(Path file) {
        SettingsOutcome outcome = reader().read(file);
        if (outcome instanceof SettingsOutcome.Usable usable) {
            return usable.settings();
        }
        throw new AssertionError(outcome);
    }
}
