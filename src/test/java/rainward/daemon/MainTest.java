package rainward.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

/** The command line as a person meets it. */
class MainTest {

    @Test
    void helpNamesTheProgramAndItsOptions() {
        var printed = new StringWriter();

        int exitCode = Main.commandLine().setOut(new PrintWriter(printed)).execute("--help");

        assertThat(exitCode).isZero();
        assertThat(printed.toString()).contains("Usage: rainward", "--help", "--version");
    }

    @Test
    void unknownOptionEndsWithExitCodeTwoAndIsNamed() {
        var printed = new StringWriter();

        int exitCode = Main.commandLine().setErr(new PrintWriter(printed)).execute("--sideways");

        assertThat(exitCode).isEqualTo(2);
        assertThat(printed.toString()).contains("--sideways");
    }
}
