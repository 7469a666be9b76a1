package rainward.daemon.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import rainward.daemon.office.CheckDesk;
import rainward.daemon.office.CheckDesk.Finding;
import rainward.daemon.office.HomeFolder;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.daemon.settings.Fault;
import rainward.daemon.settings.SettingsOutcome;
import rainward.store.row.StoreException;

/** Looks at everything that the service leans on. */
@Command(
        name = "check",
        description = {
            "Look at settings, data folder, clock, weather services, mail server and outbox.",
            "",
            "Each line says ok, or what to do. The weather services are asked once; the mail",
            "server is greeted and logged in to, and nothing is sent.",
            "Exit code 0: all is well; 1: something needs a look; 2: the settings are wrong."
        })
public final class CheckCommand extends PlacedCommand {

    /** Everything, as JSON shows it. */
    record Answer(boolean ok, List<Finding> findings) {}

    @Override
    public Integer call() {
        HomeFolder home = place.home().made();
        SettingsOutcome.Usable usable = place.read();
        List<Finding> findings = new ArrayList<>();
        findings.add(settings(place.settingsFile(), usable.warnings()));
        findings.add(CheckDesk.folder(home));
        try (Office office = place.open(usable.settings())) {
            findings.addAll(new CheckDesk(office).all());
        } catch (StoreException e) {
            findings.add(new Finding("database", false, String.valueOf(e.getMessage())));
        }
        Answer answer = new Answer(findings.stream().allMatch(Finding::ok), findings);
        show(answer, () -> text(answer));
        return answer.ok() ? 0 : Refusal.BAD_WORLD;
    }

    private static Finding settings(Path file, List<Fault> warnings) {
        return warnings.isEmpty()
                ? new Finding("settings", true, file.toString())
                : new Finding(
                        "settings",
                        false,
                        warnings.stream().map(Fault::words).collect(Collectors.joining(" ")));
    }

    private static String text(Answer answer) {
        List<List<String>> rows = answer.findings().stream()
                .map(f -> List.of(f.ok() ? "ok" : "look", f.what(), f.words()))
                .toList();
        long open = answer.findings().stream().filter(f -> !f.ok()).count();
        return Sheets.columns(rows)
                + System.lineSeparator()
                + (open == 0
                        ? "All is well."
                        : open + " of " + answer.findings().size() + " need a look.");
    }
}
