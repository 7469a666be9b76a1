package rainward.input.stock;

import java.time.Instant;
import rainward.farm.Require;

/**
 * One line in the book of the shed. A mistake is put right by a later count, never by changing a
 * line.
 *
 * @param item species or product
 * @param at when
 * @param kind what happened
 * @param massKg of it [kg]
 */
public record StockEntry(String item, Instant at, Kind kind, double massKg) {

    public StockEntry {
        Require.named("item", item);
        Require.notNegative("massKg", massKg);
    }

    /** What happened. */
    public enum Kind {
        RECEIVED,
        USED,
        /** Somebody weighed or counted: from here on this is what is there. */
        COUNTED
    }
}
