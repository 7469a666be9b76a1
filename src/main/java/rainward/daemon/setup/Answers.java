package rainward.daemon.setup;

import java.util.Optional;

/**
 * What has to be known before anything can be reckoned or mailed.
 *
 * @param name of the farm or crew
 * @param zone of its days
 * @param units {@code us} or {@code metric}
 * @param mail address that public services may write to, and that the brief goes to
 * @param server way out for mail
 */
record Answers(String name, String zone, String units, String mail, Optional<Server> server) {

    /**
     * A mail server.
     *
     * @param host its name
     * @param port where it takes mail
     * @param passwordFile holds the password for the mail address; empty: it asks for none
     */
    record Server(String host, int port, Optional<String> passwordFile) {

        /** Port 465 is encrypted from the first byte on, others turn to it when asked. */
        String security() {
            return port == 465 ? "tls" : port == 25 ? "none" : "starttls";
        }
    }
}
