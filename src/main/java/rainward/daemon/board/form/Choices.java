package rainward.daemon.board.form;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import rainward.intake.InputTables;
import rainward.intake.SharedTables;
import rainward.intake.TableFolder;

/** Choices that are not the same everywhere: what stands in the file, or in the shared tables. */
final class Choices {

    /** The machines of the file. */
    static final String MACHINES = "@machine";

    /** The species known here. */
    static final String SPECIES = "@species";

    /** Published recommendations of lime. */
    static final String LIME_RULES = "@lime";

    /** Published sieve systems of lime. */
    static final String FINENESS = "@fineness";

    private Choices() {}

    static List<String> of(Kinds.Key key, JsonNode settings) {
        return switch (String.join(",", key.choices())) {
            case MACHINES -> machines(settings);
            case SPECIES ->
                sorted(new SharedTables(TableFolder.onClassPath()).species().keySet());
            case LIME_RULES -> sorted(tables().limeRules().keySet());
            case FINENESS -> sorted(tables().finenessSystems().keySet());
            default -> key.choices();
        };
    }

    private static InputTables tables() {
        return new InputTables(TableFolder.onClassPath());
    }

    static List<String> sorted(Iterable<String> names) {
        List<String> all = new ArrayList<>();
        names.forEach(all::add);
        all.sort(null);
        return all;
    }

    private static List<String> machines(JsonNode settings) {
        List<String> machines = new ArrayList<>();
        settings.path("machine").forEach(m -> machines.add(m.path("name").asText()));
        return machines;
    }
}
