package rainward.daemon.command;

import java.io.PrintWriter;
import java.time.InstantSource;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** What commands share that work on a data folder and print a result, as text or as JSON. */
public abstract class PlacedCommand implements Callable<Integer> {

    @Mixin
    protected Place place = new Place();

    @Option(names = "--json", description = "Print JSON.")
    boolean json;

    @Spec
    CommandSpec spec = CommandSpec.create();

    /** Works at another time than the PC's. */
    public void keepTo(InstantSource clock) {
        place.keepTo(clock);
    }

    protected PrintWriter out() {
        return spec.commandLine().getOut();
    }

    /** Prints a result in the form that was asked for. */
    protected void show(Object result, Supplier<String> text) {
        out().println(json ? Sheets.json(result) : text.get());
    }
}
