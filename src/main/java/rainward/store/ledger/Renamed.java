package rainward.store.ledger;

/**
 * A field got another name.
 *
 * @param was its name before
 * @param now its name since
 */
public record Renamed(String was, String now) {}
