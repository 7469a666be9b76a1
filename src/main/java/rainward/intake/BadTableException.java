package rainward.intake;

/** A table that cannot be used: the message names file, line, column and what would be right. */
public final class BadTableException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public BadTableException(String message) {
        super(message);
    }
}
