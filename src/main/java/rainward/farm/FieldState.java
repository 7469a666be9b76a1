package rainward.farm;

/** Where a field stands in its season. */
public enum FieldState {
    /** Nothing of its recipe is done yet. */
    PENDING,
    /** A stage is done or under way, seed is not in. */
    IN_WORK,
    /** Seed is in, nobody has looked yet. */
    SEEDED,
    /** Looked at: a stand. */
    UP,
    /** Looked at: no stand; back in the queue with what is still in season. */
    FAILED,
    /** Taken out of the queue by the person. */
    DROPPED;

    /** In words of the crew. */
    public String words() {
        return switch (this) {
            case PENDING -> "waits";
            case IN_WORK -> "under way";
            case SEEDED -> "seeded";
            case UP -> "up";
            case FAILED -> "failed or thin, waits again";
            case DROPPED -> "dropped";
        };
    }
}
