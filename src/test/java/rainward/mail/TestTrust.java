package rainward.mail;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.util.concurrent.TimeUnit;

import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLSocketFactory;
import javax.net.ssl.TrustManagerFactory;

/** A key for test servers on this machine, made anew by the JDK's own tool, and trust in it. */
final class TestTrust {

    private static final String PASSWORD = "only for this test run";

    private static final Path KEYS = keys();

    private TestTrust() {}

    /** Has GreenMail use the key; to be called before its first server starts. */
    static void install() {
        System.setProperty("greenmail.tls.keystore.file", KEYS.toString());
        System.setProperty("greenmail.tls.keystore.password", PASSWORD);
        System.setProperty("greenmail.tls.key.password", PASSWORD);
    }

    /** A client that trusts this key and no other. */
    static SSLSocketFactory client() {
        return context().getSocketFactory();
    }

    static SSLContext context() {
        try (InputStream in = Files.newInputStream(KEYS)) {
            KeyStore keys = KeyStore.getInstance("PKCS12");
            keys.load(in, PASSWORD.toCharArray());
            var own = KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
            own.init(keys, PASSWORD.toCharArray());
            var trusted =
                    TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
            trusted.init(keys);
            SSLContext context = SSLContext.getInstance("TLS");
            context.init(own.getKeyManagers(), trusted.getTrustManagers(), null);
            return context;
        } catch (GeneralSecurityException | IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Path keys() {
        try {
            Path folder = Files.createTempDirectory("rainward-keys");
            Path file = folder.resolve("localhost.p12");
            Process tool = new ProcessBuilder(
                            Path.of(System.getProperty("java.home"), "bin", "keytool")
                                    .toString(),
                            "-genkeypair",
                            "-alias",
                            "localhost",
                            "-keyalg",
                            "EC",
                            "-dname",
                            "CN=localhost",
                            "-ext",
                            "san=dns:localhost",
                            "-validity",
                            "2",
                            "-storetype",
                            "PKCS12",
                            "-keystore",
                            file.toString(),
                            "-storepass",
                            PASSWORD)
                    .redirectErrorStream(true)
                    .start();
            if (!tool.waitFor(60, TimeUnit.SECONDS) || tool.exitValue() != 0) {
                throw new IllegalStateException(
                        "keytool: " + new String(tool.getInputStream().readAllBytes()));
            }
            folder.toFile().deleteOnExit();
            file.toFile().deleteOnExit();
            return file;
        } catch (IOException e) {
            throw new IllegalStateException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }
}
