/**
 * The farm office: settings, records and clock of one data folder, and the desks at which each
 * piece of work is done. In: a data folder and a settings file. Out: forecasts pulled, rounds
 * reckoned, mail written. Commands, jobs and the demo all work at the same desks, so that they
 * cannot differ.
 */
@NullMarked
package rainward.daemon.office;

import org.jspecify.annotations.NullMarked;
