package rainward.daemon.command;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import rainward.daemon.office.Office;

/** What commands share that print something of the office, as text or as JSON. */
public abstract class OfficeCommand implements Callable<Integer> {

    @Mixin
    Place place = new Place();

    @Option(names = "--json", description = "Print JSON.")
    boolean json;

    @Spec
    CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() {
        try (Office office = place.open()) {
            return work(office);
        }
    }

    /** Does the work in the open office; the exit code. */
    abstract int work(Office office);

    PrintWriter out() {
        return spec.commandLine().getOut();
    }

    /** Prints a result in the form that was asked for. */
    void show(Object result, Supplier<String> text) {
        out().println(json ? Sheets.json(result) : text.get());
    }
}
