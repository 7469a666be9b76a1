package rainward.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every number in the shared tables says where it is from, and how sure that is. */
class SourcesTest {
    private static final Path SHARED = Path.of("shared");
    private static final List<String> COLUMNS =
            List.of("key", "author", "year", "title", "where", "standing");

    @Test
    void noSourceIsListedTwiceAndEachHasAStanding() {
        Set<String> seen = new HashSet<>();
        for (TableRow row : TableFolder.at(SHARED).rows("sources.csv", COLUMNS)) {
            assertThat(seen.add(row.text("key")))
                    .as("twice: %s", row.text("key"))
                    .isTrue();
            assertThat(row.text("key")).doesNotContain(" ");
            assertThat(row.text("standing")).isNotEqualTo("-");
        }
    }

    @TestFactory
    Stream<DynamicTest> everyRowNamesASourceThatIsListed() throws IOException {
        Set<String> keys = new HashSet<>();
        TableFolder.at(SHARED)
                .rows("sources.csv", COLUMNS)
                .forEach(row -> keys.add(row.text("key")));
        return tables().stream()
                .map(table -> DynamicTest.dynamicTest(table, () -> everyRowOf(table, keys)));
    }

    private static void everyRowOf(String table, Set<String> keys) {
        List<TableRow> rows = TableFolder.at(SHARED).rows(table, List.of("source"));
        assertThat(rows).isNotEmpty();
        for (TableRow row : rows) {
            assertThat(keys).as("%s line %d", row.file(), row.line()).containsAll(row.sources());
        }
    }

    private static List<String> tables() throws IOException {
        try (Stream<Path> all = Files.walk(SHARED)) {
            return all.filter(path -> path.toString().endsWith(".csv"))
                    .map(path -> SHARED.relativize(path).toString())
                    .filter(name -> !name.equals("sources.csv"))
                    .sorted()
                    .toList();
        }
    }
}
