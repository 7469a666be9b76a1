package rainward.board.door;

/**
 * Who looks at a page.
 *
 * @param name that their words are written down under
 * @param role what they may do
 * @param token that their forms carry
 * @param known true where a PIN told who it is; else the name is only what was chosen
 */
public record Visitor(String name, Role role, String token, boolean known) {

    public boolean may(Role needed) {
        return role.mayDo(needed);
    }
}
