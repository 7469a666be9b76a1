package rainward.daemon.keep;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Map;
import picocli.CommandLine.Command;
import rainward.daemon.command.OfficeCommand;
import rainward.daemon.office.Office;

/** Copies the database now. */
@Command(
        name = "backup",
        description = {
            "Copy the database now, beside a running service too.",
            "",
            "The service does this every night. The copy is looked through before it counts, takes",
            "the place of another one of today, and the oldest are let go of: see [keep]."
        })
public final class BackupCommand extends OfficeCommand {

    @Override
    protected int work(Office office) {
        LocalDate today = LocalDate.ofInstant(office.now(), office.zone());
        Path copy = new NightDesk(office).backUp(today);
        show(Map.of("file", copy.toString()), () -> copy + " written and looked through.");
        return 0;
    }
}
