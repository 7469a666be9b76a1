/**
 * The way out for mails: from the outbox to a server that has said yes.
 *
 * <p>In come finished mails and the settings of the server. Out come acknowledgements, each stored
 * before the next mail is tried, or the reason of a refusal and the time of the next attempt.
 * {@code daemon} calls it after each brief and each alert.
 */
@NullMarked
package rainward.mail;

import org.jspecify.annotations.NullMarked;
