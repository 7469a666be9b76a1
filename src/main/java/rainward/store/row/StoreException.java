package rainward.store.row;

import org.jspecify.annotations.Nullable;

/** The data folder cannot be used; the message is one sentence for the user, with what to do. */
public final class StoreException extends RuntimeException {

    private static final long serialVersionUID = 1;

    private final boolean damage;
    private final boolean absence;

    private StoreException(String words, @Nullable Throwable cause, boolean damage) {
        super(words, cause);
        this.damage = damage;
        this.absence = cause != null && Trouble.isAbsence(cause);
    }

    public StoreException(String words, @Nullable Throwable cause) {
        this(words, cause, cause != null && Trouble.isDamage(cause));
    }

    /** What is stored makes no sense any more. */
    static StoreException damaged(String found, @Nullable Throwable cause) {
        return new StoreException(
                found + ", so the database is damaged; keep a copy of it and put back the last"
                        + " backup.",
                cause,
                true);
    }

    /** Whether the database itself is broken, so that a backup is what helps. */
    public boolean isDamage() {
        return damage;
    }

    /** Whether the server that keeps the database does not answer, so that waiting helps. */
    public boolean isAbsence() {
        return absence;
    }

    public StoreException(String words) {
        this(words, null);
    }
}
