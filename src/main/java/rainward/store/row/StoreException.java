package rainward.store.row;

import org.jspecify.annotations.Nullable;

/** The data folder cannot be used; the message is one sentence for the user, with what to do. */
public final class StoreException extends RuntimeException {

    public StoreException(String words, @Nullable Throwable cause) {
        super(words, cause);
    }

    public StoreException(String words) {
        this(words, null);
    }
}
