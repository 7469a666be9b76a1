package rainward.daemon.keep;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import rainward.daemon.command.PlacedCommand;
import rainward.daemon.office.Refusal;
import rainward.daemon.settings.Settings;
import rainward.store.Backups;
import rainward.store.Store;

/** Puts a backup back. */
@Command(
        name = "restore",
        description = {
            "Put a backup back; without FILE, list the backups.",
            "",
            "Stop the service first. The backup is looked through before anything is changed, and",
            "what was there is kept in a folder of its own beside it. What was recorded after the",
            "backup is not in it. Messages that waited in it are not sent: nobody knows which of",
            "them went out since; `outbox --retry` sends one."
        })
public final class RestoreCommand extends PlacedCommand {

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "FILE",
            description = "The backup, or `last`.")
    @Nullable
    String file;

    /** What was done, as JSON shows it. */
    record Answer(String restored, String keptAside, int notSent) {}

    @Override
    public Integer call() {
        Path home = place.home().path();
        Settings settings = place.read().settings();
        settings.database().ifPresent(at -> {
            throw Refusal.badInput(Store.noCopies(at.url()));
        });
        Settings.Keeping keeping = settings.keeping();
        List<Path> copies = Backups.in(home.resolve(keeping.backupFolder()));
        if (file == null) {
            show(
                    Map.of("backups", copies.stream().map(Path::toString).toList()),
                    () -> list(copies));
            return 0;
        }
        Path copy = file.equals("last") ? last(copies) : Path.of(file);
        Instant now = place.now();
        Path aside = Backups.restore(home, copy, now);
        Answer answer = new Answer(copy.toString(), aside.toString(), dropWaiting(home, now));
        show(answer, () -> words(answer));
        return 0;
    }

    private static int dropWaiting(Path home, Instant now) {
        try (Store store = Store.open(home)) {
            return store.inTransaction(
                    books -> books.outbox().dropWaiting(now, "waited in the backup"));
        }
    }

    private static Path last(List<Path> copies) {
        return copies.stream()
                .findFirst()
                .orElseThrow(() -> Refusal.badInput("There is no backup yet: name a file."));
    }

    private static String list(List<Path> copies) {
        if (copies.isEmpty()) {
            return "There is no backup yet; the service makes one every night.";
        }
        return String.join(
                        System.lineSeparator(),
                        copies.stream().map(Path::toString).toList())
                + System.lineSeparator()
                + "`rainward restore last` puts the first of them back.";
    }

    private static String words(Answer answer) {
        return answer.restored() + " is put back; what was there is now " + answer.keptAside() + "."
                + (answer.notSent() == 0
                        ? ""
                        : System.lineSeparator() + answer.notSent()
                                + " messages that waited in it are not sent; see"
                                + " `rainward outbox`.");
    }
}
