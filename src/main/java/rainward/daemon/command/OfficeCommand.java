package rainward.daemon.command;

import rainward.daemon.office.Office;

/** What commands share that work in an open office. */
public abstract class OfficeCommand extends PlacedCommand {

    @Override
    public Integer call() {
        try (Office office = place.open()) {
            return work(office);
        }
    }

    /** Does the work in the open office; the exit code. */
    protected abstract int work(Office office);
}
