package rainward.daemon.office;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.LoggerContext;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.slf4j.LoggerFactory;

/** The service's log file. */
class LogsTest {

    @TempDir
    Path folder;

    private List<String> logged(Runnable work) throws IOException {
        Logs.toFile(folder);
        try {
            work.run();
        } finally {
            var root = ((LoggerContext) LoggerFactory.getILoggerFactory())
                    .getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
            root.getAppender("file").stop();
            root.detachAppender("file");
        }
        try (Stream<Path> files = Files.list(folder)) {
            return Files.readAllLines(files.findFirst().orElseThrow());
        }
    }

    @Test
    void whatOthersSaidCannotMakeALineOrSteerAScreen() throws IOException {
        String forged = "550 no\r\n2026-07-14T05:00:00.000Z INFO  brief sent\u001b[2J\u0007";

        List<String> lines = logged(
                () -> LoggerFactory.getLogger("rainward.test").warn("server said {}", forged));

        assertThat(lines).hasSize(1);
        assertThat(lines.get(0)).contains("550 no | 2026").doesNotContain("\u001b", "\u0007");
    }

    @Test
    void neitherCanTheMessageOfABugAndItsTraceIsThereOnce() throws IOException {
        List<String> lines = logged(() -> LoggerFactory.getLogger("rainward.test")
                .error("failed", new IllegalStateException("x\n2026-07-14 INFO forged")));

        assertThat(lines).hasSize(1);
        assertThat(lines.get(0))
                .contains("IllegalStateException", "forged", "LogsTest")
                .containsOnlyOnce("java.lang.IllegalStateException: x");
    }
}
