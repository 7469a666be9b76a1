package rainward.daemon;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.HelpCommand;

import rainward.daemon.command.BriefCommand;
import rainward.daemon.command.DemoCommand;
import rainward.daemon.command.ImportCommand;
import rainward.daemon.command.OrderCommand;
import rainward.daemon.command.PullCommand;
import rainward.daemon.command.RainCommand;
import rainward.daemon.command.ReadyCommand;
import rainward.daemon.command.RunCommand;
import rainward.daemon.command.StageCommand;
import rainward.daemon.command.WindowsCommand;
import rainward.daemon.office.Refusal;
import rainward.store.StoreException;

/** The one command of the program; its work is done by subcommands. */
@Command(
        name = "rainward",
        mixinStandardHelpOptions = true,
        versionProvider = Main.Version.class,
        description = "Which field to seed next, so that it lies seeded when the rain comes.",
        subcommands = {
            DemoCommand.class,
            RunCommand.class,
            BriefCommand.class,
            ImportCommand.class,
            OrderCommand.class,
            ReadyCommand.class,
            WindowsCommand.class,
            PullCommand.class,
            StageCommand.Start.class,
            StageCommand.Done.class,
            StageCommand.Undo.class,
            RainCommand.class,
            HelpCommand.class
        })
public final class Main implements Runnable {

    public static void main(String[] args) {
        System.exit(commandLine().execute(args));
    }

    static CommandLine commandLine() {
        CommandLine line = new CommandLine(new Main());
        line.setExecutionExceptionHandler((e, command, result) -> explained(e, command));
        return line;
    }

    /** What stands in the way is told in words; only a bug shows its trace. */
    private static int explained(Exception e, CommandLine command) throws Exception {
        if (e instanceof Refusal refusal) {
            command.getErr().println(refusal.getMessage());
            return refusal.exitCode();
        }
        if (e instanceof StoreException broken) {
            command.getErr().println(broken.getMessage());
            return Refusal.BAD_WORLD;
        }
        throw e;
    }

    @Override
    public void run() {
        commandLine().usage(System.out);
    }

    /** The version written into the jar's manifest by the build. */
    static final class Version implements CommandLine.IVersionProvider {
        @Override
        public String[] getVersion() {
            String version = Main.class.getPackage().getImplementationVersion();
            return new String[] {"rainward " + (version == null ? "(not packaged)" : version)};
        }
    }
}
