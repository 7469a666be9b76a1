package rainward.daemon.skill;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import rainward.daemon.command.OfficeCommand;
import rainward.daemon.office.Office;
import rainward.daemon.office.Refusal;
import rainward.daemon.office.SkillDesk;

/** Prints how good chances have been. */
@Command(
        name = "skill",
        description = {
            "Print how good the forecasts' chances of rain were at each property, and our own",
            "chance of a stand.",
            "",
            "Brier score: 0 is best. Skill: against the month's usual chance, 1 is best, 0 no",
            "better. Chances are corrected by what they came to once a lead time has 200 cases."
        })
public final class SkillCommand extends OfficeCommand {

    /** Parts of the archive that a person waits for, each two seconds at the most. */
    private static final int ARCHIVE_PARTS = 10;

    @Option(
            names = "--picture",
            paramLabel = "FILE",
            description = "Also draw what was said against what came, as PNG.")
    @Nullable
    Path picture;

    @Override
    protected int work(Office office) {
        SkillDesk desk = new SkillDesk(office);
        for (int part = 0; part < ARCHIVE_PARTS; part++) {
            desk.readArchive();
        }
        SkillSheet sheet = SkillSheet.of(office);
        Optional.ofNullable(picture).ifPresent(file -> draw(sheet, file));
        show(sheet, () -> SkillText.of(sheet));
        return 0;
    }

    private static void draw(SkillSheet sheet, Path file) {
        try {
            Files.write(file, SkillPicture.png(sheet));
        } catch (IOException e) {
            throw Refusal.badInput("--picture: cannot write " + file + ": " + e.getMessage());
        }
    }
}
