package rainward.queue.problem;

import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** How times are written in reasons. */
public final class Words {

    /** For instance {@code Tue 14 Jul 13:00}. */
    public static final DateTimeFormatter DAY_AND_HOUR =
            DateTimeFormatter.ofPattern("EEE d MMM HH:mm", Locale.ENGLISH);

    private Words() {}
}
