package rainward.mail;

import java.time.Duration;
import java.util.Optional;

/** What came of one try to hand a message over. */
public sealed interface Delivery {

    /** More of what a stranger says is neither kept nor shown [characters]. */
    int MOST_SAID = 300;

    /** What the other side or the network said, on one line and cut to {@link #MOST_SAID}. */
    String said();

    /** Words of a stranger as they are kept: printable, on one line, not too many. */
    private static String kept(String said) {
        String line = said.replaceAll("\\p{Cntrl}+", " ").strip();
        return line.length() <= MOST_SAID ? line : line.substring(0, MOST_SAID - 1) + "…";
    }

    /** The server has taken the message on. */
    record Accepted(String said) implements Delivery {
        public Accepted {
            said = kept(said);
        }
    }

    /**
     * The server will never take this message.
     *
     * @param code of its answer
     */
    record PermanentRefusal(int code, String said) implements Delivery {
        public PermanentRefusal {
            said = kept(said);
        }
    }

    /**
     * Not now: the server asks to come again, or it cannot be reached, or it does not know us. A
     * login that is refused is of this sort, because nothing is wrong with the message.
     *
     * @param comeAgainAfter where the server said so
     */
    record Passing(String said, Optional<Duration> comeAgainAfter) implements Delivery {
        public Passing {
            said = kept(said);
        }

        static Passing because(String said) {
            return new Passing(said, Optional.empty());
        }
    }
}
