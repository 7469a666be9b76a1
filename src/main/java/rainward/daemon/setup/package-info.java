/**
 * The first run: five questions, and a settings file out of the annotated example. In: answers.
 * Out: a file that the program itself has read and found usable.
 */
@NullMarked
package rainward.daemon.setup;

import org.jspecify.annotations.NullMarked;
