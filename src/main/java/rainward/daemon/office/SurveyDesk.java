package rainward.daemon.office;

import java.nio.file.Path;
import java.util.List;
import rainward.farm.Survey;
import rainward.intake.FieldFile;
import rainward.intake.InputFault;
import rainward.intake.Intake;
import rainward.intake.KnownNames;
import rainward.intake.TableFolder;
import rainward.intake.TextureClasses;
import rainward.store.ground.FieldBook;

/** Where fields are taken in. */
public final class SurveyDesk {

    private final Office office;

    public SurveyDesk(Office office) {
        this.office = office;
    }

    /**
     * What was taken in.
     *
     * @param counts new and updated fields
     * @param warnings what is doubtful about the file
     */
    public record Took(FieldBook.Taken counts, List<InputFault> warnings) {}

    /**
     * Takes a file in, whole.
     *
     * @throws Refusal with every fault; nothing is taken in then
     */
    public Took take(Path file) {
        Intake<Survey> intake = new FieldFile(known(office)).read(file);
        if (intake instanceof Intake.Rejected<Survey> rejected) {
            throw Refusal.badInput(
                    rejected.faults().stream().map(InputFault::words).toList());
        }
        Intake.Accepted<Survey> accepted = (Intake.Accepted<Survey>) intake;
        return new Took(
                office.store()
                        .inTransaction(
                                books -> books.fields().take(accepted.value(), office.now())),
                accepted.warnings());
    }

    /** What a field may refer to, and what holds where it does not tell. */
    public static KnownNames known(Office office) {
        return KnownNames.of(
                office.roster(),
                TextureClasses.of(TableFolder.onClassPath()),
                new KnownNames.UsualGround(
                        office.settings().soil().organicMatterPct(),
                        office.settings().soil().slopeFraction()));
    }
}
