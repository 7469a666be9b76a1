package rainward.daemon;

import java.time.InstantSource;
import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.HelpCommand;
import picocli.CommandLine.Model.OptionSpec;
import rainward.daemon.command.BenchCommand;
import rainward.daemon.command.BriefCommand;
import rainward.daemon.command.CheckCommand;
import rainward.daemon.command.DemoCommand;
import rainward.daemon.command.DoorCommand;
import rainward.daemon.command.FieldCommand;
import rainward.daemon.command.ImportCommand;
import rainward.daemon.command.OrderCommand;
import rainward.daemon.command.OutboxCommand;
import rainward.daemon.command.PlacedCommand;
import rainward.daemon.command.PullCommand;
import rainward.daemon.command.RainCommand;
import rainward.daemon.command.ReadyCommand;
import rainward.daemon.command.RunCommand;
import rainward.daemon.command.SoilCommand;
import rainward.daemon.command.StageCommand;
import rainward.daemon.command.StandCommand;
import rainward.daemon.command.SurveyCommand;
import rainward.daemon.command.VerifyCommand;
import rainward.daemon.command.WindowsCommand;
import rainward.daemon.keep.BackupCommand;
import rainward.daemon.keep.MoveStoreCommand;
import rainward.daemon.keep.RestoreCommand;
import rainward.daemon.office.Refusal;
import rainward.daemon.replay.ReplayCommand;
import rainward.daemon.setup.SetupCommand;
import rainward.daemon.skill.SkillCommand;
import rainward.daemon.yard.command.CountCommand;
import rainward.daemon.yard.command.EnterCommand;
import rainward.daemon.yard.command.ExportCommand;
import rainward.daemon.yard.command.LoadCommand;
import rainward.daemon.yard.command.RenameCommand;
import rainward.daemon.yard.command.SeasonCommand;
import rainward.daemon.yard.command.SeederCommand;
import rainward.daemon.yard.command.SpreadCommand;
import rainward.daemon.yard.command.StockCommand;
import rainward.store.row.StoreException;

/** The one command of the program; its work is done by subcommands. */
@Command(
        name = "rainward",
        mixinStandardHelpOptions = true,
        versionProvider = Main.Version.class,
        description = "Which field to seed next, so that it lies seeded when the rain comes.",
        commandListHeading = "%nCommands, in the order in which a season needs them:%n",
        footer = {
            "",
            "A first look, with an invented crew:   rainward demo",
            "Your own settings, by five questions:  rainward setup",
            "Your own fields:                       rainward import fields.geojson",
            "What is still missing:                 rainward check",
            "The order now, and why a field waits:  rainward order --why \"North lot\"",
            "What one more tractor would bring:     rainward order --what-if \"add tiller\"",
            "Work done, rain measured:              rainward done \"North lot\" seed",
            "                                       rainward rain \"Mill Pond\" 0.45in",
            "",
            "Names may be cut short while they stay clear. `rainward help COMMAND` tells the rest.",
            "Exit codes: 0 done; 1 the world stands in the way; 2 what was typed or set is wrong."
        })
public final class Main implements Runnable {

    /** In the order in which they are listed. */
    private static final List<Class<?>> COMMANDS = List.of(
            DemoCommand.class,
            SetupCommand.class,
            CheckCommand.class,
            ImportCommand.class,
            RunCommand.class,
            DoorCommand.class,
            PullCommand.class,
            BriefCommand.class,
            OutboxCommand.class,
            OrderCommand.class,
            ReadyCommand.class,
            WindowsCommand.class,
            FieldCommand.Pin.class,
            FieldCommand.Hold.class,
            FieldCommand.Drop.class,
            FieldCommand.Free.class,
            FieldCommand.Note.class,
            StageCommand.Start.class,
            StageCommand.Done.class,
            StageCommand.Undo.class,
            RainCommand.class,
            SoilCommand.class,
            SurveyCommand.class,
            StandCommand.class,
            SeederCommand.class,
            LoadCommand.class,
            StockCommand.class,
            SpreadCommand.class,
            CountCommand.class,
            RenameCommand.class,
            SeasonCommand.class,
            ExportCommand.class,
            EnterCommand.class,
            BackupCommand.class,
            RestoreCommand.class,
            MoveStoreCommand.class,
            SkillCommand.class,
            ReplayCommand.class,
            VerifyCommand.class,
            BenchCommand.class,
            HelpCommand.class);

    public static void main(String[] args) {
        CommandLine.IFactory factory = new ByClock(InstantSource.system());
        System.exit(commandLine(factory, asked(args)).execute(args));
    }

    /** To build all commands takes longer than most of them run, so only the one asked for is. */
    private static List<Class<?>> asked(String[] args) {
        return COMMANDS.stream()
                .filter(type -> args.length > 0
                        && type.getAnnotation(Command.class).name().equals(args[0]))
                .findFirst()
                .filter(type -> type != HelpCommand.class)
                .<List<Class<?>>>map(List::of)
                .orElse(COMMANDS);
    }

    static CommandLine commandLine() {
        return commandLine(InstantSource.system());
    }

    /** The commands, at work by another clock than the PC's. */
    static CommandLine commandLine(InstantSource clock) {
        return commandLine(new ByClock(clock), COMMANDS);
    }

    private static CommandLine commandLine(CommandLine.IFactory factory, List<Class<?>> commands) {
        CommandLine line = new CommandLine(new Main(), factory);
        commands.forEach(line::addSubcommand);
        line.setExecutionExceptionHandler((e, command, result) -> explained(e, command));
        line.getSubcommands().values().forEach(Main::answerHelp);
        return line;
    }

    /** Gives --help to a command and all below it, so that none has to think of it. */
    private static void answerHelp(CommandLine command) {
        if (command.getCommandSpec().findOption("--help") == null) {
            command.getCommandSpec()
                    .addOption(OptionSpec.builder("-h", "--help")
                            .usageHelp(true)
                            .description("Show this help message and exit.")
                            .build());
        }
        command.getSubcommands().values().forEach(Main::answerHelp);
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

    /** Makes commands that keep to one clock. */
    private record ByClock(InstantSource clock) implements CommandLine.IFactory {
        @Override
        public <K> K create(Class<K> type) throws Exception {
            K made = CommandLine.defaultFactory().create(type);
            if (made instanceof PlacedCommand command) {
                command.keepTo(clock);
            } else if (made instanceof RunCommand service) {
                service.keepTo(clock);
            }
            return made;
        }
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
