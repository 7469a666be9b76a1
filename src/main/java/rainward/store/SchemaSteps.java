package rainward.store;

import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import org.flywaydb.core.api.ResourceProvider;
import org.flywaydb.core.api.resource.LoadableResource;
import org.jspecify.annotations.Nullable;

/**
 * The schema steps, one text for all engines, each in the words of one of them.
 *
 * @param engine whose words
 */
record SchemaSteps(Engine engine) implements ResourceProvider {

    /** In {@code src/main/resources/db}, the oldest first. */
    static final List<String> FILES = List.of(
            "V1__first_season.sql",
            "V2__last_known.sql",
            "V3__ledger.sql",
            "V4__forecast_record.sql");

    @Override
    public @Nullable LoadableResource getResource(String name) {
        return FILES.stream()
                .filter(name::endsWith)
                .map(file -> new Step(file, engine.step(text(file))))
                .findFirst()
                .orElse(null);
    }

    @Override
    public Collection<LoadableResource> getResources(String prefix, String[] suffixes) {
        return FILES.stream()
                .filter(file ->
                        file.startsWith(prefix) && Arrays.stream(suffixes).anyMatch(file::endsWith))
                .<LoadableResource>map(file -> new Step(file, engine.step(text(file))))
                .toList();
    }

    private static String text(String file) {
        try (InputStream in = SchemaSteps.class.getResourceAsStream("/db/" + file)) {
            if (in == null) {
                throw new IllegalStateException("the program lacks its schema step " + file);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException("cannot read " + file, e);
        }
    }

    /** A step in the words of an engine. */
    private static final class Step extends LoadableResource {

        private final String file;
        private final String sql;

        Step(String file, String sql) {
            this.file = file;
            this.sql = sql;
        }

        @Override
        public Reader read() {
            return new StringReader(sql);
        }

        @Override
        public String getAbsolutePath() {
            return "db/" + file;
        }

        @Override
        public String getAbsolutePathOnDisk() {
            return getAbsolutePath();
        }

        @Override
        public String getFilename() {
            return file;
        }

        @Override
        public String getRelativePath() {
            return file;
        }
    }
}
