package rainward.store.row;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;

/** Bodies as they lie on disk: compressed, with a checksum that tells whether they are whole. */
public final class Gzip {

    private Gzip() {}

    public static byte[] pack(byte[] body) {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(packed)) {
            gzip.write(body);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return packed.toByteArray();
    }

    /** The body, if it is whole: an answer cut short or changed on disk is no answer. */
    public static Optional<byte[]> unpack(byte[] packed, String sha256) {
        try (GZIPInputStream gzip = new GZIPInputStream(new ByteArrayInputStream(packed))) {
            byte[] body = gzip.readAllBytes();
            return sha256(body).equals(sha256) ? Optional.of(body) : Optional.empty();
        } catch (IOException damaged) {
            return Optional.empty();
        }
    }

    public static String sha256(byte[] body) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(body));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
