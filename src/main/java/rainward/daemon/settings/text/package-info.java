/**
 * The settings file as text: where each key stands, and single values changed in place, so that
 * comments, order and spelling of everything else stay. In: a text that was read without a fault.
 * Out: line numbers, and another text.
 */
@NullMarked
package rainward.daemon.settings.text;

import org.jspecify.annotations.NullMarked;
