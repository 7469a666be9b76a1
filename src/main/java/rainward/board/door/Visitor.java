package rainward.board.door;

/**
 * Who looks at a page.
 *
 * @param name that their words are written down under
 * @param role what they may do
 * @param known true where a PIN told who it is; else the name is only what was chosen
 */
public record Visitor(String name, Role role, boolean known) {

    public boolean may(Role needed) {
        return role.mayDo(needed);
    }
}
