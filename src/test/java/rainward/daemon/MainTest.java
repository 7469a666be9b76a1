package rainward.daemon;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;

/** The command line as a person meets it. */
class MainTest {

    @Test
    void helpNamesTheProgramAndItsOptions() {
        var printed = new StringWriter();

        int exitCode = Main.commandLine().setOut(new PrintWriter(printed)).execute("--help");

        assertThat(exitCode).isZero();
        assertThat(printed.toString()).contains("Usage: rainward", "--help", "--version");
    }

    static Stream<String> everyCommand() {
        return below(Main.commandLine())
                .map(CommandLine::getCommandSpec)
                .map(CommandSpec::qualifiedName);
    }

    private static Stream<CommandLine> below(CommandLine line) {
        return line.getSubcommands().values().stream()
                .flatMap(command -> Stream.concat(Stream.of(command), below(command)));
    }

    @ParameterizedTest
    @MethodSource("everyCommand")
    void everyCommandTellsHowItIsUsed(String name) {
        var printed = new StringWriter();
        String[] typed = (name + " --help").split(" ");

        int exitCode = Main.commandLine()
                .setOut(new PrintWriter(printed))
                .execute(Arrays.copyOfRange(typed, 1, typed.length));

        assertThat(exitCode).isZero();
        assertThat(printed.toString()).contains("Usage: " + name).contains("--help");
    }

    @Test
    void unknownOptionEndsWithExitCodeTwoAndIsNamed() {
        var printed = new StringWriter();

        int exitCode = Main.commandLine().setErr(new PrintWriter(printed)).execute("--sideways");

        assertThat(exitCode).isEqualTo(2);
        assertThat(printed.toString()).contains("--sideways");
    }
}
