package rainward.daemon.command;

import java.util.function.Supplier;
import rainward.daemon.office.Office;

/** An office command whose work is written in another package. */
public abstract class DeskCommand extends OfficeCommand {

    @Override
    final int work(Office office) {
        return serve(office);
    }

    /** Does the work in the open office; the exit code. */
    protected abstract int serve(Office office);

    /** Prints a result in the form that was asked for. */
    protected final void tell(Object result, Supplier<String> text) {
        show(result, text);
    }

    protected final boolean asJson() {
        return json;
    }
}
