package rainward.window;

/**
 * What to do about a window, and why.
 *
 * @param step what happens to it
 * @param send true where a message goes out
 * @param window as it is now; at closing, as it was last
 * @param reason sort of reason
 * @param words for the user
 */
public record WindowDecision(
        Step step, boolean send, StormWindow window, Reason reason, String words) {

    /** What happens to a window. */
    public enum Step {
        OPEN,
        CHANGE,
        CLOSE,
        /** Nothing that is worth a message. */
        KEEP
    }

    /** Sorts of reason. */
    public enum Reason {
        /** Useful rain is likely and there is ground that can be seeded ahead of it. */
        NEW_WINDOW,
        /** It comes earlier or later than was told. */
        ARRIVAL_MOVED,
        /** It is more or less likely than was told. */
        CHANCE_MOVED,
        /** A field that was told to fit does so no more. */
        FIELD_FITS_NO_MORE,
        /** The rain is there. */
        RAIN_CAME,
        /** It is no longer likely enough. */
        RAIN_FADED,
        /** Every field that fits has its seed, or none fits any more. */
        NOTHING_LEFT_TO_SEED,
        /** As it was told. */
        NO_CHANGE,
        /** Not likely enough to open. */
        NOT_LIKELY,
        /** It waits for the end of the quiet hours. */
        QUIET_HOURS,
        /** Enough messages for one day. */
        ENOUGH_FOR_TODAY
    }
}
