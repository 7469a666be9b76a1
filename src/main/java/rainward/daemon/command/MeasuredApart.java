package rainward.daemon.command;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import rainward.daemon.office.Refusal;

/** A benchmark in a process with the heap and the collector of the packaged service. */
abstract class MeasuredApart implements Callable<Integer> {

    @Option(names = "--json", description = "Print JSON.")
    boolean json;

    @Option(names = "--here", hidden = true, description = "In this process.")
    boolean here;

    @Spec
    CommandSpec spec = CommandSpec.create();

    /** The command with its options, as the process is to be asked; refuses what is wrong. */
    abstract List<String> words();

    /** The figures, measured in this process. */
    abstract String measured() throws IOException;

    @Override
    public final Integer call() throws IOException, InterruptedException {
        List<String> words = words();
        spec.commandLine().getOut().println(here ? measured() : OwnProcess.measured(json, words));
        return 0;
    }

    /** A number of an option, which has to be 1 or more. */
    static String counted(String option, int number) {
        if (number < 1) {
            throw Refusal.badInput(option + " is " + number + ", must be 1 or more.");
        }
        return String.valueOf(number);
    }
}
