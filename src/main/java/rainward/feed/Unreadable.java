package rainward.feed;

/** An answer that is not what was asked for; never leaves this package. */
final class Unreadable extends Exception {

    Unreadable(String words) {
        super(words);
    }

    /** What is wrong, to follow the name of the service in a sentence. */
    String words() {
        return String.valueOf(getMessage());
    }
}
