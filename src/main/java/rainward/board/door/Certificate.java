package rainward.board.door;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import okhttp3.tls.HeldCertificate;

/** The certificate by which the board is told from others. */
public final class Certificate {

    private static final int YEARS = 2;
    private static final String FILE = "board-certificate.pem";

    private Certificate() {}

    /**
     * Made once and kept, so that a telephone that was told to trust it goes on doing so.
     *
     * @param folder that keeps it, readable by the owner only
     * @param names that it holds for
     */
    public static KeyStore selfMade(Path folder, Set<String> names)
            throws IOException, GeneralSecurityException {
        Path file = folder.resolve(FILE);
        if (!Files.exists(file)) {
            HeldCertificate.Builder builder = new HeldCertificate.Builder()
                    .commonName("Rainward board")
                    .duration(YEARS * 365L, TimeUnit.DAYS);
            names.forEach(
                    name -> builder.addSubjectAlternativeName(name.replaceAll("[\\[\\]]", "")));
            HeldCertificate made = builder.build();
            Files.writeString(file, made.certificatePem() + made.privateKeyPkcs8Pem());
            if (Files.getFileStore(file).supportsFileAttributeView("posix")) {
                Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
            }
        }
        return given(List.of(file));
    }

    /** From files that hold a certificate and its key, in one or in two. */
    public static KeyStore given(List<Path> pem) throws IOException, GeneralSecurityException {
        StringBuilder all = new StringBuilder();
        for (Path file : pem) {
            all.append(Files.readString(file)).append('\n');
        }
        HeldCertificate held = HeldCertificate.decode(all.toString());
        KeyStore store = KeyStore.getInstance("PKCS12");
        store.load(null, null);
        store.setKeyEntry(
                "board",
                held.keyPair().getPrivate(),
                new char[0],
                new java.security.cert.Certificate[] {held.certificate()});
        return store;
    }
}
