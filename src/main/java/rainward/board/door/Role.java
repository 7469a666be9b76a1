package rainward.board.door;

/** What a visitor may do; each role may do what those before it may. */
public enum Role {
    /** Look at everything. */
    READ,
    /** Say what was done, seen and measured, and put fields first or off. */
    CREW,
    /** Drop fields, send mail again, change settings. */
    LEAD;

    public boolean mayDo(Role needed) {
        return compareTo(needed) >= 0;
    }
}
