package rainward.feed.reading;

/** An answer that is not what was asked for; never leaves this package. */
public final class Unreadable extends Exception {

    public Unreadable(String words) {
        super(words);
    }

    /** What is wrong, to follow the name of the service in a sentence. */
    public String words() {
        return String.valueOf(getMessage());
    }
}
