/**
 * The command {@code replay}: past seasons run again, as text, as JSON and as a page with pictures.
 */
@NullMarked
package rainward.daemon.replay;

import org.jspecify.annotations.NullMarked;
