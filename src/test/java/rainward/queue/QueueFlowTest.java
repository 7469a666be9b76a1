package rainward.queue;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

/** The packages of the queue in order: each may read only those before it. */
class QueueFlowTest {

    static final List<String> PARTS = List.of(
            "problem", "pace", "search", "shop", "model", "plan", "bound", "reasons", "check",
            "sample");

    static final JavaClasses QUEUE = new ClassFileImporter()
            .withImportOption(location -> !location.contains("test-classes"))
            .importPackages("rainward.queue");

    @ParameterizedTest
    @FieldSource("PARTS")
    void onlyEarlierPartsAreReadBy(String part) {
        String[] later = PARTS.subList(PARTS.indexOf(part) + 1, PARTS.size()).stream()
                .map(p -> "rainward.queue." + p)
                .toArray(String[]::new);
        assertThat(QUEUE).anyMatch(c -> c.getPackageName().equals("rainward.queue." + part));

        if (later.length > 0) {
            noClasses()
                    .that()
                    .resideInAPackage("rainward.queue." + part)
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(later)
                    .check(QUEUE);
        }
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
                .check(QUEUE);
    }

    @Test
    void everyClassLivesInAPart() {
        assertThat(QUEUE)
                .allMatch(c -> PARTS.contains(c.getPackageName().replace("rainward.queue.", "")));
    }
}
