package rainward.farm;

/** What a machine does to a field; a stage of a recipe asks for one of these. */
public enum Operation {
    MOW,
    SPRAY,
    SPREAD,
    DISK,
    TILL,
    SEED,
    FIRM
}
