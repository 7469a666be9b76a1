package rainward.farm;

/** How seed is put down; it sets the rate, the depth and the contact with the soil. */
public enum SeedingMethod {
    /** Dropped between two rollers: shallow and pressed in. */
    ROLLED,
    /** Opened, placed and closed at a set depth. */
    DRILLED,
    /** Thrown on the surface, covered lightly or not at all. */
    BROADCAST
}
