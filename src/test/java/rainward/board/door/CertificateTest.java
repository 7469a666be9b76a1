package rainward.board.door;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.X509Certificate;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import okhttp3.tls.HeldCertificate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Certificates, made and given. */
class CertificateTest {

    private static final Instant START = Instant.parse("2026-07-13T09:00:00Z");

    @TempDir
    Path folder;

    private static X509Certificate own(KeyStore store) throws GeneralSecurityException {
        return (X509Certificate) store.getCertificate("board");
    }

    private X509Certificate selfMade(Instant asOf) throws IOException, GeneralSecurityException {
        return own(Certificate.selfMade(folder, Set.of("yard-pc.lan", "[::1]"), asOf));
    }

    @Test
    void selfMadeOneIsKeptUntilItEndsSoonAndIsThenMadeAgain() throws Exception {
        X509Certificate first = selfMade(START);

        assertThat(selfMade(START.plus(Duration.ofDays(600)))).isEqualTo(first);
        X509Certificate second = selfMade(START.plus(Duration.ofDays(700)));
        assertThat(second).isNotEqualTo(first);
        assertThat(second.getNotAfter()).isAfter(first.getNotAfter());
        assertThat(first.getSubjectAlternativeNames().toString()).contains("yard-pc.lan");
    }

    @Test
    void keyOfTheSelfMadeOneIsTheOwnersAlone() throws Exception {
        selfMade(START);

        Path file = folder.resolve("board-certificate.pem");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo("rw-------");
        try (var all = Files.list(folder)) {
            assertThat(all).containsExactly(file);
        }
    }

    /** A root that vouches for an intermediate that vouches for the board. */
    private final HeldCertificate root = new HeldCertificate.Builder()
            .commonName("root")
            .certificateAuthority(1)
            .build();

    private final HeldCertificate between = new HeldCertificate.Builder()
            .commonName("between")
            .certificateAuthority(0)
            .signedBy(root)
            .build();

    private final HeldCertificate board = new HeldCertificate.Builder()
            .commonName("yard-pc.lan")
            .signedBy(between)
            .rsa2048()
            .build();

    private List<Path> files(String certificates, String key) throws IOException {
        return List.of(
                Files.writeString(folder.resolve("chain.pem"), certificates),
                Files.writeString(folder.resolve("key.pem"), key));
    }

    @Test
    void givenChainIsShownWhole() throws Exception {
        KeyStore store = Certificate.given(files(
                "yard-pc.lan of the office\n" + board.certificatePem() + between.certificatePem(),
                board.privateKeyPkcs8Pem()));

        assertThat(store.getCertificateChain("board"))
                .containsExactly(board.certificate(), between.certificate());
        assertThat(store.getKey("board", new char[0])).isEqualTo(board.keyPair().getPrivate());
    }

    @Test
    void filesThatDoNotGoTogetherAreToldApart() throws Exception {
        assertThatThrownBy(() -> Certificate.given(files(
                        between.certificatePem() + board.certificatePem(),
                        board.privateKeyPkcs8Pem())))
                .isInstanceOfAny(IllegalArgumentException.class, GeneralSecurityException.class);
        assertThatThrownBy(() -> Certificate.given(files(
                        board.certificatePem() + root.certificatePem(),
                        board.privateKeyPkcs8Pem())))
                .hasMessageContaining("CN=root does not vouch for CN=yard-pc.lan");
        HeldCertificate other = new HeldCertificate.Builder().rsa2048().build();
        assertThatThrownBy(() -> Certificate.given(
                        files(board.certificatePem(), other.privateKeyPkcs8Pem())))
                .hasMessageContaining("is not that of the first certificate");
        assertThatThrownBy(() -> Certificate.given(
                        files(board.certificatePem(), board.privateKeyPkcs1Pem())))
                .hasMessageContaining("PKCS#8");
        assertThatThrownBy(() -> Certificate.given(files(board.certificatePem(), "")))
                .hasMessageContaining("not 1 and 0");
    }
}
