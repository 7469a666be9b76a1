package rainward.store;

import org.jspecify.annotations.Nullable;

/** The data folder cannot be used; the message is one sentence for the user, with what to do. */
public final class StoreException extends RuntimeException {

    StoreException(String words, @Nullable Throwable cause) {
        super(words, cause);
    }

    StoreException(String words) {
        this(words, null);
    }
}
