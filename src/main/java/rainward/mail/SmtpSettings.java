package rainward.mail;

import java.time.Duration;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import rainward.farm.Require;

/**
 * The mail server that takes what goes out.
 *
 * @param server where it listens
 * @param security how the way there is kept
 * @param login to the server, if it asks for one
 * @param sender whom the mail comes from
 * @param timeout to connect, and for each answer
 */
public record SmtpSettings(
        Server server, Security security, Optional<Login> login, Sender sender, Duration timeout) {

    private static final Set<String> THIS_MACHINE = Set.of("localhost", "127.0.0.1", "::1");

    public SmtpSettings {
        Require.that(
                login.isEmpty() || security != Security.PLAIN || isThisMachine(server.host()),
                "a password must not go to " + server.host()
                        + " in the clear; use starttls or tls");
        Require.that(!timeout.isNegative() && !timeout.isZero(), "mail timeout must be above 0");
    }

    /** True where a password may go in the clear, because it leaves no machine. */
    public static boolean isThisMachine(String host) {
        return THIS_MACHINE.contains(host.toLowerCase(Locale.ROOT));
    }

    /** Where the server listens. */
    public record Server(String host, int port) {

        public Server {
            Require.named("mail server", host);
            Require.inRange("mail server port", port, 1, 65_535);
        }
    }

    /** How the way to the server is kept. */
    public enum Security {
        /** In the clear; for a server on the same machine. */
        PLAIN,
        /** In the clear at first; nothing is sent unless the server then turns to TLS. */
        STARTTLS,
        /** TLS from the first byte. */
        TLS
    }

    /** Name and password; the password is never printed. */
    public record Login(String user, String password) {

        @Override
        public String toString() {
            return "Login[user=" + user + ", password=***]";
        }
    }

    /** Whom the mail comes from. */
    public record Sender(String name, String address) {

        public Sender {
            Require.that(
                    address.indexOf('@') > 0 && address.indexOf('@') < address.length() - 1,
                    "sender " + address + " is no mail address");
        }

        String domain() {
            return address.substring(address.lastIndexOf('@') + 1);
        }
    }
}
