package rainward.store.ledger;

import java.util.Optional;

/**
 * A field got a boundary, or another one.
 *
 * @param wasHa area that was seeded before [ha]
 * @param nowHa area that is seeded since [ha]
 * @param was geometry before (RFC 7946); empty where it had none
 */
public record Bounded(double wasHa, double nowHa, Optional<String> was) {}
