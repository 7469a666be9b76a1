package rainward.replay.crew;

import rainward.farm.Require;

/** Ways of choosing what comes next. */
public enum Policy {
    AS_LISTED("as listed"),
    NEAREST_NEXT("nearest next"),
    LARGEST_FIRST("largest first"),
    READIEST_FIRST("readiest first"),
    RAIN_SOONEST("rain soonest first"),
    RAINWARD("rainward"),
    NOTHING_KEPT("rainward, keeping no seed"),
    TOLD_THE_FUTURE("told ten days ahead"),
    TOLD_THE_SEASON("told the whole season");

    private final String words;

    Policy(String words) {
        Require.named("policy", words);
        this.words = words;
    }

    public String words() {
        return words;
    }

    /** True for what a crew does without reckoning. */
    public boolean simple() {
        return compareTo(RAINWARD) < 0;
    }

    /** True where seed may be kept for days after those planned, as the service does. */
    boolean keepsSeed() {
        return this != NOTHING_KEPT;
    }

    /** True where the weather to come is known. */
    boolean knowing() {
        return this == TOLD_THE_FUTURE || this == TOLD_THE_SEASON;
    }
}
