package rainward.daemon.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import rainward.daemon.demo.Demo;
import rainward.daemon.office.HomeFolder;
import rainward.daemon.office.Refusal;

/** Shows the whole at work. */
@Command(
        name = "demo",
        description = {
            "Show the whole at work: an invented crew, an invented July, a storm three days out.",
            "",
            "Forecasts are served on this machine and pulled by the real client; nothing else is",
            "asked. Mails are laid down as files in demo-mail, in the data folder."
        })
public final class DemoCommand implements Callable<Integer> {

    private static final String MARK = "demo-home";

    @Option(
            names = "--home",
            paramLabel = "DIR",
            description =
                    "Data folder of the demo; else ./demo-home. An earlier demo there is replaced.")
    @Nullable
    Path home;

    @Option(names = "--once", description = "Only the first morning.")
    boolean once;

    @Option(
            names = "--stay",
            description = "Keep the board open at the end; where a person watches it is kept.")
    boolean stay;

    @Spec
    CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() throws IOException {
        Path folder = home == null ? Path.of(MARK) : home;
        clear(folder);
        Files.createDirectories(folder);
        Files.writeString(folder.resolve(MARK), "A demo made this folder and may replace it.\n");
        Demo.run(new Demo.Show(
                new HomeFolder(folder.toAbsolutePath().normalize()),
                once,
                spec.commandLine().getOut(),
                System.console() != null,
                stay || System.console() != null));
        return 0;
    }

    /** Takes an earlier demo away; a folder that holds anything else is left alone. */
    private static void clear(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        try (Stream<Path> inside = Files.list(folder)) {
            if (!Files.exists(folder.resolve(MARK)) && inside.findAny().isPresent()) {
                throw Refusal.badInput(
                        "The folder " + folder + " holds something that no demo made:"
                                + " name an empty one with --home.");
            }
        }
        Folders.delete(folder);
    }
}
