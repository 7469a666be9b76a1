package rainward.board.door;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.PrivateKey;
import java.security.PublicKey;
import java.security.Signature;
import java.security.cert.CertificateFactory;
import java.security.cert.X509Certificate;
import java.security.spec.PKCS8EncodedKeySpec;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What files in the text form of certificates (RFC 7468) hold.
 *
 * @param chain the board's own certificate, then the one that vouches for it, and so on (RFC 8446
 *     section 4.4.2)
 * @param key of the first one
 */
record PemFiles(List<X509Certificate> chain, PrivateKey key) {

    private static final Pattern BLOCK =
            Pattern.compile("-----BEGIN ([A-Z0-9 ]+)-----([^-]*)-----END \\1-----");

    PemFiles {
        chain = List.copyOf(chain);
    }

    /**
     * Reads files, the certificate in one and its key in the same or another.
     *
     * @throws IllegalArgumentException in words, where they do not go together
     */
    static PemFiles of(List<Path> files) throws IOException, GeneralSecurityException {
        List<X509Certificate> chain = new ArrayList<>();
        List<byte[]> keys = new ArrayList<>();
        for (Path file : files) {
            Matcher block = BLOCK.matcher(Files.readString(file, StandardCharsets.US_ASCII));
            while (block.find()) {
                switch (block.group(1)) {
                    case "CERTIFICATE" -> chain.add(certificate(bytes(file, block)));
                    case "PRIVATE KEY" -> keys.add(bytes(file, block));
                    case "EC PRIVATE KEY", "RSA PRIVATE KEY", "ENCRYPTED PRIVATE KEY" ->
                        throw new IllegalArgumentException(
                                file + " holds an "
                                        + block.group(1).toLowerCase(java.util.Locale.ROOT)
                                        + "; write it as a plain PKCS#8 key (openssl pkcs8 -topk8 -nocrypt)");
                    default -> {
                        // Parameters of a curve and the like stand in the key as well.
                    }
                }
            }
        }
        if (chain.isEmpty() || keys.size() != 1) {
            throw new IllegalArgumentException("there must be a certificate and one private key in "
                    + files + ", not " + chain.size() + " and " + keys.size());
        }
        return checked(chain, keys.get(0));
    }

    private static byte[] bytes(Path file, Matcher block) {
        try {
            return Base64.getMimeDecoder().decode(block.group(2));
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(
                    file + " holds a block that is not base64: " + e.getMessage(), e);
        }
    }

    private static X509Certificate certificate(byte[] encoded) throws GeneralSecurityException {
        return (X509Certificate) CertificateFactory.getInstance("X.509")
                .generateCertificate(new ByteArrayInputStream(encoded));
    }

    private static PemFiles checked(List<X509Certificate> chain, byte[] encoded)
            throws GeneralSecurityException {
        PublicKey own = chain.get(0).getPublicKey();
        PrivateKey key = KeyFactory.getInstance(own.getAlgorithm())
                .generatePrivate(new PKCS8EncodedKeySpec(encoded));
        if (!goTogether(key, own)) {
            throw new IllegalArgumentException(
                    "the private key is not that of the first certificate," + " "
                            + chain.get(0).getSubjectX500Principal());
        }
        for (int i = 1; i < chain.size(); i++) {
            if (!chain.get(i - 1)
                    .getIssuerX500Principal()
                    .equals(chain.get(i).getSubjectX500Principal())) {
                throw new IllegalArgumentException(
                        "each certificate must be followed by the one that vouches for it; "
                                + chain.get(i).getSubjectX500Principal() + " does not vouch for "
                                + chain.get(i - 1).getSubjectX500Principal());
            }
        }
        return new PemFiles(chain, key);
    }

    private static boolean goTogether(PrivateKey key, PublicKey own)
            throws GeneralSecurityException {
        String kind = own.getAlgorithm().equals("RSA")
                ? "SHA256withRSA"
                : own.getAlgorithm().equals("EC") ? "SHA256withECDSA" : own.getAlgorithm();
        byte[] text = "board".getBytes(StandardCharsets.US_ASCII);
        Signature signature = Signature.getInstance(kind);
        signature.initSign(key);
        signature.update(text);
        byte[] signed = signature.sign();
        signature.initVerify(own);
        signature.update(text);
        return signature.verify(signed);
    }
}
