/**
 * The service: which work is due when. In: an open office. Out: the same work at the same desks as
 * the commands do, by the clock. Every piece of work can run twice without harm.
 */
@NullMarked
package rainward.daemon.service;

import org.jspecify.annotations.NullMarked;
