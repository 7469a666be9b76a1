package rainward.board.page;

import rainward.farm.FieldState;

/** Patterns by which ground of one state is told from others, by name. */
final class Hatching {

    private static final int SOME_READINESS = 34;
    private static final int MUCH_READINESS = 67;

    private Hatching() {}

    static String of(FieldState state) {
        return switch (state) {
            case UP -> "up";
            case SEEDED -> "seeded";
            case IN_WORK -> "begun";
            case PENDING -> "waits-mid";
            case FAILED -> "failed";
            case DROPPED -> "off";
        };
    }

    /** A field that waits shows how ready it is. */
    static String ofWaiting(int readiness) {
        return readiness < SOME_READINESS
                ? "waits-low"
                : readiness < MUCH_READINESS ? "waits-mid" : "waits-high";
    }
}
