package rainward.board.door;

import com.password4j.BcryptFunction;
import com.password4j.Password;
import com.password4j.types.Bcrypt;

/**
 * PINs are kept as a slow hash only. A PIN of six digits has few values, so that the rate limit of
 * {@link Doorbell} guards it while somebody knocks, and the slow hash if the database is stolen.
 */
public final class PinHash {

    /** Digits of a PIN, least and most: common practice, no source. */
    public static final int LEAST_DIGITS = 6;

    public static final int MOST_DIGITS = 12;

    /** 2 to the 12th rounds: a quarter of a second on an office PC; chosen. */
    private static final BcryptFunction SLOW = BcryptFunction.getInstance(Bcrypt.B, 12);

    private PinHash() {}

    public static String of(String pin) {
        return Password.hash(pin).with(SLOW).getResult();
    }

    public static boolean matches(String pin, String hash) {
        return pin.length() <= MOST_DIGITS && Password.check(pin, hash).with(SLOW);
    }

    /** What is wrong with a PIN that somebody chose; empty where nothing is. */
    public static String faultOf(String pin) {
        boolean digits = pin.chars().allMatch(c -> c >= '0' && c <= '9');
        if (!digits || pin.length() < LEAST_DIGITS || pin.length() > MOST_DIGITS) {
            return "a PIN has " + LEAST_DIGITS + " to " + MOST_DIGITS + " digits";
        }
        boolean oneDigit = pin.chars().distinct().count() == 1;
        boolean counting =
                "01234567890123456789".contains(pin) || "98765432109876543210".contains(pin);
        return oneDigit || counting ? "that PIN is the first one that anybody tries" : "";
    }
}
