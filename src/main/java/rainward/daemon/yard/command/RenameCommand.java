package rainward.daemon.yard.command;

import java.util.Map;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rainward.daemon.command.OfficeCommand;
import rainward.daemon.office.Office;
import rainward.daemon.word.LandDesk;

/** Gives a field another name. */
@Command(
        name = "rename",
        description = {
            "Give a field another name. All that was written about it is read under the new one;",
            "a file that still has the old name updates the same field."
        })
public final class RenameCommand extends OfficeCommand {

    @Parameters(index = "0", paramLabel = "FIELD", description = "The field.")
    String field = "";

    @Parameters(index = "1", paramLabel = "NAME", description = "Its new name.")
    String name = "";

    @Option(names = "--by", paramLabel = "NAME", description = "Who says so.")
    String by = "office";

    @Override
    protected int work(Office office) {
        String words = office.store()
                .inTransaction(books -> new LandDesk(office).rename(books, field, name, by))
                .words();
        show(Map.of("words", words), () -> words);
        return 0;
    }
}
