package rainward.board.door;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.X509Certificate;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import okhttp3.tls.HeldCertificate;

/** The certificate by which the board is told from others. */
public final class Certificate {

    private static final Duration LASTS = Duration.ofDays(2 * 365L);

    /** Time enough that somebody starts the machine before it ends. */
    private static final Duration RENEWED_BEFORE = Duration.ofDays(60);

    private static final String FILE = "board-certificate.pem";

    private Certificate() {}

    /**
     * Made once and kept, so that a telephone that was told to trust it goes on doing so; made
     * again some weeks before it ends.
     *
     * @param folder that keeps it, readable by the owner only
     * @param names that it holds for
     * @param asOf the moment
     */
    public static KeyStore selfMade(Path folder, Set<String> names, Instant asOf)
            throws IOException, GeneralSecurityException {
        Path file = folder.resolve(FILE);
        if (!Files.exists(file) || endsSoon(file, asOf)) {
            HeldCertificate.Builder builder = new HeldCertificate.Builder()
                    .commonName("Rainward board")
                    .validityInterval(asOf.toEpochMilli(), asOf.plus(LASTS).toEpochMilli());
            names.forEach(
                    name -> builder.addSubjectAlternativeName(name.replaceAll("[\\[\\]]", "")));
            HeldCertificate made = builder.build();
            keep(folder, made.certificatePem() + made.privateKeyPkcs8Pem());
        }
        return given(List.of(file));
    }

    /** True where it is time for another one. */
    private static boolean endsSoon(Path file, Instant asOf)
            throws IOException, GeneralSecurityException {
        X509Certificate kept = PemFiles.of(List.of(file)).chain().get(0);
        return kept.getNotAfter().toInstant().isBefore(asOf.plus(RENEWED_BEFORE));
    }

    /** Nobody else can read it at any moment: it is made so, filled, and put in place. */
    private static void keep(Path folder, String pem) throws IOException {
        Path file = folder.resolve(FILE);
        Path fresh = file.resolveSibling(FILE + ".new");
        Files.deleteIfExists(fresh);
        try (SeekableByteChannel out = Files.newByteChannel(
                fresh,
                Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE),
                ownersOnly(folder))) {
            ByteBuffer bytes = ByteBuffer.wrap(pem.getBytes(StandardCharsets.US_ASCII));
            while (bytes.hasRemaining()) {
                out.write(bytes);
            }
        }
        Files.move(
                fresh, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }

    private static FileAttribute<?>[] ownersOnly(Path folder) throws IOException {
        return Files.getFileStore(folder).supportsFileAttributeView("posix")
                ? new FileAttribute<?>[] {
                    PosixFilePermissions.asFileAttribute(
                            PosixFilePermissions.fromString("rw-------"))
                }
                : new FileAttribute<?>[0];
    }

    /**
     * From files that hold a certificate, those that vouch for it, and its key.
     *
     * @throws IllegalArgumentException in words, where they do not go together
     */
    public static KeyStore given(List<Path> pem) throws IOException, GeneralSecurityException {
        PemFiles files = PemFiles.of(pem);
        KeyStore store = KeyStore.getInstance("PKCS12");
        store.load(null, null);
        store.setKeyEntry(
                "board", files.key(), new char[0], files.chain().toArray(new X509Certificate[0]));
        return store;
    }
}
