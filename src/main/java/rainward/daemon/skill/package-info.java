/** The command {@code skill}: how good chances of rain and of a stand have been. */
@NullMarked
package rainward.daemon.skill;

import org.jspecify.annotations.NullMarked;
