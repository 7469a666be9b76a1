package rainward.daemon.keep;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import rainward.daemon.command.PlacedCommand;
import rainward.daemon.office.HomeFolder;
import rainward.daemon.office.NameMatch;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.daemon.settings.Settings;
import rainward.store.FolderLock;
import rainward.store.Move;
import rainward.store.Store;

/** Carries the records from the file of the data folder into a server's database, or back. */
@Command(
        name = "move-store",
        description = {
            "Carry all records into the database that [store] names, or back into a file.",
            "",
            "Stop the service first. The side that is moved to must be empty; the side",
            "that is moved from is only read and stays as it is. All comes over or",
            "nothing, and every row is compared before it counts.",
            "",
            "  --to server   from rainward.db into what [store] in the settings names",
            "  --to file     the way back; then take [store] out of the settings"
        })
public final class MoveStoreCommand extends PlacedCommand {

    private static final String SERVER = "server";

    @Option(
            names = "--to",
            required = true,
            paramLabel = "SIDE",
            description = "`server` or `file`.")
    String side = SERVER;

    /** What was done, as JSON shows it. */
    record Answer(String from, String to, Map<String, Long> rows) {}

    @Override
    public Integer call() {
        boolean toServer =
                NameMatch.of(side, List.of(SERVER, "file")).orRefuse("side").equals(SERVER);
        HomeFolder home = place.home().made();
        Settings.Database database = place.read()
                .settings()
                .database()
                .orElseThrow(() -> Refusal.badInput("The settings name no server: add [store] with"
                        + " url and user, for either way."));
        try (FolderLock lock = FolderLock.take(home.path());
                Store server = Store.open(Office.server(database));
                Store.Hold alone = server.alone();
                Store file = Store.open(home.path())) {
            Store from = toServer ? file : server;
            Store to = toServer ? server : file;
            Map<String, Long> rows = Move.of(from, to, home.path());
            Answer answer = new Answer(from.place(), to.place(), rows);
            show(answer, () -> words(answer, toServer));
        }
        return 0;
    }

    private static String words(Answer answer, boolean toServer) {
        String lines = answer.rows().entrySet().stream()
                .map(table -> "%10d  %s%n".formatted(table.getValue(), table.getKey()))
                .collect(Collectors.joining());
        long all = answer.rows().values().stream().mapToLong(Long::longValue).sum();
        return lines + all + " rows moved to " + answer.to() + ", each compared; " + answer.from()
                + " stays as it was."
                + (toServer ? "" : " Take [store] out of the settings now.");
    }
}
