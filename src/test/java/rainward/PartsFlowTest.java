package rainward;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Within one entry of the list of packages: the parts in order, each may read only those before it.
 * The empty name stands for the entry's own package.
 */
class PartsFlowTest {

    static final Map<String, List<String>> PARTS = Map.of(
            "weather",
            List.of(
                    "alert",
                    "rain",
                    "sky",
                    "climate",
                    "source",
                    "past",
                    "skill",
                    "marginal",
                    "trace"),
            "soil",
            List.of("property", "", "water", "heat", "column", "verify"),
            "queue",
            List.of(
                    "problem", "pace", "search", "shop", "model", "plan", "bound", "reasons",
                    "check", "sample"),
            "input",
            List.of(
                    "",
                    "check",
                    "fertilizer",
                    "lime",
                    "seed",
                    "seeder",
                    "load",
                    "record",
                    "spread",
                    "stock"),
            "cycle",
            List.of("ground", "", "sheet"),
            "replay",
            List.of("truth", "crew", "score", ""),
            "feed",
            List.of(
                    "",
                    "reading",
                    "terms",
                    "hourly",
                    "wire",
                    "alert",
                    "nws",
                    "point",
                    "soil",
                    "past",
                    "recorded"),
            "board",
            List.of("door", "house", "live", "picture", "api", "page", ""));

    static Stream<Arguments> everyPart() {
        return PARTS.entrySet().stream()
                .flatMap(entry ->
                        entry.getValue().stream().map(part -> Arguments.of(entry.getKey(), part)));
    }

    private static String named(String entry, String part) {
        return "rainward." + entry + (part.isEmpty() ? "" : "." + part);
    }

    private static String[] later(String entry, String part) {
        List<String> parts = PARTS.get(entry);
        return parts.subList(parts.indexOf(part) + 1, parts.size()).stream()
                .map(p -> named(entry, p))
                .toArray(String[]::new);
    }

    @ParameterizedTest
    @MethodSource("everyPart")
    void onlyEarlierPartsAreReadBy(String entry, String part) {
        String[] later = later(entry, part);
        assertThat(PackageFlowTest.PROGRAM)
                .anyMatch(c -> c.getPackageName().equals(named(entry, part)));

        if (later.length > 0) {
            noClasses()
                    .that()
                    .resideInAPackage(named(entry, part))
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(later)
                    .check(PackageFlowTest.PROGRAM);
        }
    }

    @Test
    void everyClassLivesInAPart() {
        PARTS.forEach((entry, parts) -> assertThat(PackageFlowTest.PROGRAM.stream()
                        .map(JavaClass::getPackageName)
                        .filter(name -> name.equals(named(entry, ""))
                                || name.startsWith(named(entry, "") + ".")))
                .isSubsetOf(parts.stream().map(part -> named(entry, part)).toList()));
    }

    @Test
    void theCheckerSharesOnlyTimesAndRoadsWithThePlanner() {
        noClasses()
                .that()
                .resideInAPackage("rainward.queue.check")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "rainward.queue.search",
                        "rainward.queue.shop",
                        "rainward.queue.model",
                        "rainward.queue.plan")
                .check(PackageFlowTest.PROGRAM);
    }
}
