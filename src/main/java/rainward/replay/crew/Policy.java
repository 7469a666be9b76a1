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
    RAINWARD_PATIENT("rainward, patient"),
    TOLD_THE_FUTURE("told the future"),
    TOLD_PATIENT("told the future, patient");

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

    /** True where a seeding has to gain over waiting. */
    boolean patient() {
        return this == RAINWARD_PATIENT || this == TOLD_PATIENT;
    }

    /** True where the weather to come is known. */
    boolean knowing() {
        return this == TOLD_THE_FUTURE || this == TOLD_PATIENT;
    }
}
