/**
 * The chance of a stand by seeding hour
 *
 * <p>every kind of seed of a mix walked along every trace.:{@code readiness}, {@code cycle} and
 * {@code daemon} read it.
 */
@NullMarked
package rainward.stand.model;

import org.jspecify.annotations.NullMarked;
