/**
 * The chance of a stand by seeding hour: every kind of seed of a mix walked along every trace.
 *
 * <p>{@code readiness}, {@code cycle} and {@code daemon} read it.
 */
@NullMarked
package rainward.stand.model;

import org.jspecify.annotations.NullMarked;
