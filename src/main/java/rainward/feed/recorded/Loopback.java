package rainward.feed.recorded;

import com.sun.net.httpserver.HttpServer;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;

/** Servers that only this machine can reach. */
public final class Loopback {

    /**
     * Lets an answer out at once. Without it the body waits until the asker has confirmed the
     * headers, which takes him 40 ms, and that is nearly all of a question's time.
     */
    private static final String AT_ONCE = "sun.net.httpserver.nodelay";

    private Loopback() {}

    /** A server on a free port, not yet started. */
    public static HttpServer server() throws IOException {
        System.setProperty(AT_ONCE, "true");
        return HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    }
}
