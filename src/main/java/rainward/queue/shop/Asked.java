package rainward.queue.shop;

/**
 * Tasks to be placed.
 *
 * @param chain in order
 * @param waitUntil minute before which seed waits
 * @param after end of the work that they follow, or that there is none
 * @param mayBeLate true where a greatest wait after that work is not held: it goes on already
 * @param keeps true where all is made ready and the seed is kept
 */
record Asked(Chain chain, int waitUntil, int after, boolean mayBeLate, boolean keeps) {

    /** No work that they follow. */
    static final int NOT_GOING = -1;

    boolean goesOn() {
        return after != NOT_GOING;
    }

    /** True where the first task begins later than it may, after work that ends so. */
    boolean startsTooLate(Task first, int start, int finish) {
        boolean held = goesOn() && !mayBeLate;
        return start > chain.latest() || (held && start - finish > first.waits().greatest());
    }
}
