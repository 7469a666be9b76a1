/**
 * Briefs and alerts as pages that strict mail clients show.
 *
 * <p>In come values and their words. Out come pages with inline styles and no script. {@code post}
 * puts them into letters.
 */
@NullMarked
package rainward.brief.page;

import org.jspecify.annotations.NullMarked;
