package rainward.daemon;

import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The one command of the program; its work is done by subcommands. */
@Command(
        name = "rainward",
        mixinStandardHelpOptions = true,
        versionProvider = Main.Version.class,
        description = "Which field to seed next, so that it lies seeded when the rain comes.")
public final class Main implements Runnable {

    public static void main(String[] args) {
        System.exit(commandLine().execute(args));
    }

    static CommandLine commandLine() {
        return new CommandLine(new Main());
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
