package rainward.mail;

import java.time.Duration;
import java.util.Optional;

/** What came of one try to hand a message over. */
public sealed interface Delivery {

    /** What the other side or the network said. */
    String said();

    /** The server has taken the message on. */
    record Accepted(String said) implements Delivery {}

    /**
     * The server will never take this message.
     *
     * @param code of its answer
     */
    record PermanentRefusal(int code, String said) implements Delivery {}

    /**
     * Not now: the server asks to come again, or it cannot be reached, or it does not know us. A
     * login that is refused is of this sort, because nothing is wrong with the message.
     *
     * @param comeAgainAfter where the server said so
     */
    record Passing(String said, Optional<Duration> comeAgainAfter) implements Delivery {

        static Passing because(String said) {
            return new Passing(said, Optional.empty());
        }
    }
}
