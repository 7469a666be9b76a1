package rainward.board;

import io.javalin.config.JettyConfig;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.time.Instant;
import java.util.concurrent.TimeUnit;
import org.eclipse.jetty.ee10.servlet.SessionHandler;
import org.eclipse.jetty.http.HttpCookie;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.SecureRequestCustomizer;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.server.SslConnectionFactory;
import org.eclipse.jetty.session.DefaultSessionCache;
import org.eclipse.jetty.session.FileSessionDataStore;
import org.eclipse.jetty.util.component.LifeCycle;
import org.eclipse.jetty.util.ssl.SslContextFactory;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rainward.board.door.Certificate;

/** How the server is put together: threads, sessions, connection. */
final class Connection {

    private static final Logger LOG = LoggerFactory.getLogger(Connection.class);

    private static final int MOST_THREADS = 16;
    private static final int LEAST_THREADS = 3;
    private static final int IDLE_MS = 60_000;
    private static final int SLOWEST_REQUEST_MS = 30_000;
    private static final int MOST_HEADER_BYTES = 16 * 1024;

    private final BoardRules rules;

    Connection(BoardRules rules) {
        this.rules = rules;
    }

    void put(JettyConfig jetty) {
        QueuedThreadPool threads = new QueuedThreadPool(MOST_THREADS, LEAST_THREADS, IDLE_MS);
        threads.setName("board");
        threads.setDaemon(true);
        jetty.threadPool = threads;
        jetty.modifyHttpConfiguration(http -> {
            http.setSendServerVersion(false);
            http.setRequestHeaderSize(MOST_HEADER_BYTES);
        });
        jetty.modifyServletContextHandler(context -> context.setSessionHandler(sessions()));
        jetty.addConnector(this::connector);
    }

    private SessionHandler sessions() {
        boolean secure = rules.place().security().kind() != BoardRules.Security.Kind.PLAIN;
        SessionHandler sessions = new SessionHandler();
        sessions.setHttpOnly(true);
        sessions.setSameSite(HttpCookie.SameSite.STRICT);
        sessions.setSecureRequestOnly(true);
        sessions.getSessionCookieConfig().setName("rainward");
        sessions.getSessionCookieConfig().setSecure(secure);
        int seconds = (int) rules.sessionEnds().toSeconds();
        sessions.getSessionCookieConfig().setMaxAge(seconds);
        sessions.setMaxInactiveInterval(seconds);
        // A cookie lives from its last look on, as the session does.
        sessions.setRefreshCookieAge(Math.max(1, seconds / 8));
        DefaultSessionCache cache = new DefaultSessionCache(sessions);
        FileSessionDataStore files = new FileSessionDataStore();
        files.setStoreDir(folder().toFile());
        files.setDeleteUnrestorableFiles(true);
        cache.setSessionDataStore(files);
        sessions.setSessionCache(cache);
        return sessions;
    }

    private Path folder() {
        try {
            return Files.createDirectories(rules.folder().resolve("board-sessions"));
        } catch (IOException e) {
            throw new IllegalStateException("cannot make a folder in " + rules.folder(), e);
        }
    }

    private ServerConnector connector(Server server, HttpConfiguration http) {
        ServerConnector connector = switch (rules.place().security().kind()) {
            case PLAIN -> new ServerConnector(server, 1, 1, new HttpConnectionFactory(http));
            case SELF_MADE, GIVEN -> secure(server, http);
        };
        connector.setHost(rules.place().listen());
        connector.setPort(rules.place().port());
        connector.setIdleTimeout(SLOWEST_REQUEST_MS);
        return connector;
    }

    private ServerConnector secure(Server server, HttpConfiguration http) {
        SslContextFactory.Server ssl = new SslContextFactory.Server();
        ssl.setKeyStore(keys());
        ssl.setKeyStorePassword("");
        server.addEventListener(new LifeCycle.Listener() {
            @Override
            public void lifeCycleStarted(LifeCycle started) {
                lookAgainTomorrow(server, ssl);
            }
        });
        HttpConfiguration https = new HttpConfiguration(http);
        // The Host check of the guard says which names are right.
        https.addCustomizer(new SecureRequestCustomizer(false));
        HttpConnectionFactory plain = new HttpConnectionFactory(https);
        return new ServerConnector(
                server, 1, 1, new SslConnectionFactory(ssl, plain.getProtocol()), plain);
    }

    /** A service may run for longer than its certificate, made by itself or given by the user. */
    private void lookAgainTomorrow(Server server, SslContextFactory.Server ssl) {
        server.getScheduler()
                .schedule(
                        () -> {
                            try {
                                ssl.reload(again -> again.setKeyStore(keys()));
                            } catch (Exception e) {
                                LOG.error("{}; the one before stays in use", e.getMessage());
                            }
                            lookAgainTomorrow(server, ssl);
                        },
                        1,
                        TimeUnit.DAYS);
    }

    private KeyStore keys() {
        try {
            return rules.place().security().kind() == BoardRules.Security.Kind.GIVEN
                    ? Certificate.given(rules.place().security().files())
                    : Certificate.selfMade(
                            rules.folder(), rules.place().hosts().names(), Instant.now());
        } catch (IOException | GeneralSecurityException | IllegalArgumentException e) {
            throw new IllegalStateException("the certificate cannot be used: " + e.getMessage(), e);
        }
    }
}
