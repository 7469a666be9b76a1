package rainward.feed.wire;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Proxy;
import java.net.ProxySelector;
import java.net.SocketAddress;
import java.net.URI;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.X509Certificate;
import java.util.List;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManager;
import javax.net.ssl.TrustManagerFactory;
import javax.net.ssl.X509TrustManager;
import okhttp3.OkHttpClient;
import org.jspecify.annotations.Nullable;
import rainward.feed.terms.Gateway;

/** Connections through the proxy of an office, trusting the authority of an office as well. */
public final class Connections {

    private Connections() {}

    /** A client for a gateway. */
    public static OkHttpClient through(Gateway gateway) {
        OkHttpClient.Builder client = new OkHttpClient.Builder();
        gateway.proxy().ifPresent(proxy -> client.proxySelector(new Around(proxy)));
        if (!gateway.authorities().isEmpty()) {
            trust(client, gateway.authorities());
        }
        return client.build();
    }

    private static void trust(OkHttpClient.Builder client, List<X509Certificate> more) {
        try {
            KeyStore all = KeyStore.getInstance(KeyStore.getDefaultType());
            all.load(null, null);
            int n = 0;
            for (X509Certificate usual : managerOf(null).getAcceptedIssuers()) {
                all.setCertificateEntry("usual" + n++, usual);
            }
            for (X509Certificate own : more) {
                all.setCertificateEntry("own" + n++, own);
            }
            X509TrustManager manager = managerOf(all);
            SSLContext context = SSLContext.getInstance("TLS");
            context.init(null, new TrustManager[] {manager}, null);
            client.sslSocketFactory(context.getSocketFactory(), manager);
        } catch (GeneralSecurityException | IOException e) {
            throw new IllegalStateException("this Java cannot hold certificates", e);
        }
    }

    /** Trusts what a store holds; without one, what Java trusts. */
    private static X509TrustManager managerOf(@Nullable KeyStore store)
            throws GeneralSecurityException {
        TrustManagerFactory factory =
                TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
        factory.init(store);
        for (TrustManager manager : factory.getTrustManagers()) {
            if (manager instanceof X509TrustManager known) {
                return known;
            }
        }
        throw new GeneralSecurityException("no manager of X.509 certificates");
    }

    /** Through the proxy to everything but this machine. */
    private static final class Around extends ProxySelector {

        private final InetSocketAddress proxy;

        Around(InetSocketAddress proxy) {
            this.proxy = proxy;
        }

        @Override
        public List<Proxy> select(URI uri) {
            String host = String.valueOf(uri.getHost());
            boolean here = host.equals("localhost")
                    || host.startsWith("127.")
                    || host.equals(InetAddress.getLoopbackAddress().getHostAddress());
            return List.of(here ? Proxy.NO_PROXY : new Proxy(Proxy.Type.HTTP, proxy));
        }

        @Override
        public void connectFailed(URI uri, SocketAddress address, IOException failure) {
            // The call itself fails with it and says so.
        }
    }
}
