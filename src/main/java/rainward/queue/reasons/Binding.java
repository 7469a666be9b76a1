package rainward.queue.reasons;

/** What keeps an item from starting sooner. */
public enum Binding {
    /** It starts at once. */
    NOW,
    /** The person holds it until then. */
    HELD,
    /** The stage before it ends then. */
    STAGE_BEFORE,
    /** The wait after the stage before it ends then. */
    WAIT,
    /** The machine comes from other work. */
    MACHINE,
    /** The person comes from another machine. */
    PERSON,
    /** The shift or the daylight begins. */
    DAY_START,
    /** Ground or wind stop it until then. */
    GROUND,
    /** A later hour is better for the seed. */
    BETTER_HOUR,
    /** Done sooner, it would be stale before the next stage. */
    NEXT_STAGE
}
