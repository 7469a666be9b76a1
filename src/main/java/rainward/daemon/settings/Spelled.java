package rainward.daemon.settings;

import java.util.Locale;

/** Constants of ours as people write and read them. */
public final class Spelled {

    private Spelled() {}

    /** As one writes it in settings and commands: {@code soil-tests}. */
    public static String dashed(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** As one reads it: {@code soil tests}. */
    public static String spaced(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
