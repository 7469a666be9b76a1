/**
 * Who may come in, and how: host names, sessions, PINs, form tokens, headers, certificates. In:
 * every request before anything else sees it. Out: the visitor, or a refusal. On the machine itself
 * the door stands open; from the network it asks for a name and a PIN.
 */
@NullMarked
package rainward.board.door;

import org.jspecify.annotations.NullMarked;
