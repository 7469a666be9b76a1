package rainward.store.round;

import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/**
 * Which slots of which jobs are done. A job that runs twice for one slot, because it was late and
 * recovered both, has its effect once.
 */
public final class JobLog {

    private final Handle handle;

    public JobLog(Handle handle) {
        this.handle = handle;
    }

    /**
     * Marks a slot as done, in the same transaction as the effect of the job: if the process dies
     * between, neither counts.
     *
     * @param job its name
     * @param due the slot, not the time it really ran
     * @param now when it ran
     * @return false where the slot is done already; then the job leaves its effect out
     */
    public boolean once(String job, Instant due, Instant now) {
        return handle.createUpdate("""
                                insert into job_done (job, due_at, done_at, note)
                                values (:job, :due, :now, '') on conflict (job, due_at) do nothing
                                """)
                        .bind("job", job)
                        .bind("due", due.toEpochMilli())
                        .bind("now", now.toEpochMilli())
                        .execute()
                == 1;
    }

    /** Adds to a slot that is done what came of it, for {@code check} and the log. */
    public void note(String job, Instant due, String words) {
        handle.createUpdate("update job_done set note = :words where job = :job and due_at = :due")
                .bind("job", job)
                .bind("due", due.toEpochMilli())
                .bind("words", words)
                .execute();
    }

    /** The newest slot of a job that is done. */
    public Optional<Instant> lastDue(String job) {
        return handle.createQuery("select max(due_at) from job_done where job = :job")
                .bind("job", job)
                .mapTo(Long.class)
                .findOne()
                .map(Instant::ofEpochMilli);
    }

    /** Forgets slots that are so old that nobody will run them again. */
    public int forgetBefore(Instant moment) {
        return handle.createUpdate("delete from job_done where due_at < :moment")
                .bind("moment", moment.toEpochMilli())
                .execute();
    }
}
