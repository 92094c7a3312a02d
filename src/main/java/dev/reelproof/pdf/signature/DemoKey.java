package dev.reelproof.pdf.signature;

import java.io.IOException;
import java.io.OutputStream;
import java.math.BigInteger;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.KeyStore;
import java.security.SecureRandom;
import java.security.cert.Certificate;
import java.security.cert.X509Certificate;
import java.security.spec.ECGenParameterSpec;
import java.time.Instant;
import java.util.Date;
import java.util.Optional;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x509.Extension;
import org.bouncycastle.asn1.x509.KeyUsage;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;

/**
 * The key of an installation that was given none: made at its first use, in the data folder, with a certificate that it signed itself
 * and whose subject says what it is. Everybody can make such a key: it shows that a document is unchanged, and nothing of who signed.
 */
public final class DemoKey {
    private static final String MARK = "DEMONSTRATION KEY";
    private static final String SUBJECT =
            "CN=" + MARK + " - proves nothing,O=DEMO (Reelproof without a key of its own)";
    private static final String FILE = "demo-signing-key.p12";
    private static final String PASSWORD = "demo";
    private static final String ALIAS = "demo";
    private static final int SERIAL_BITS = 64;

    /** So wide that no test's clock and no archive falls out of it. */
    private static final Instant FROM = Instant.parse("2020-01-01T00:00:00Z");

    private static final Instant TO = Instant.parse("2049-12-31T00:00:00Z");

    private DemoKey() {}

    /** Whether a certificate says that its key is one for demonstration. */
    public static boolean isSubjectOf(X509Certificate certificate) {
        return certificate.getSubjectX500Principal().getName().contains(MARK);
    }

    /** The demo key of a data folder, made now when there is none. */
    public static SigningKey in(Path folder) {
        Path file = folder.resolve(FILE);
        if (!Files.exists(file)) {
            make(file);
        }
        return KeyStores.file(file, PASSWORD, Optional.of(ALIAS), true);
    }

    private static void make(Path file) {
        try {
            Path folder = Files.createDirectories(file.toAbsolutePath().getParent());
            // Whole before it has its name: who looks in between must find none or all. The temporary file is its
            // owner's alone.
            Path made = Files.createTempFile(folder, FILE, ".new");
            try (OutputStream out = Files.newOutputStream(made)) {
                store().store(out, PASSWORD.toCharArray());
            }
            try {
                Files.move(made, file);
            } catch (FileAlreadyExistsException e) {
                Files.delete(made); // Another made it first: theirs is as good.
            }
        } catch (IOException | GeneralSecurityException | OperatorCreationException e) {
            throw new CannotSignException("The demonstration key " + file + " cannot be made: " + e.getMessage(), e);
        }
    }

    private static KeyStore store() throws IOException, GeneralSecurityException, OperatorCreationException {
        KeyPairGenerator generator = KeyPairGenerator.getInstance("EC");
        generator.initialize(new ECGenParameterSpec("secp256r1"));
        KeyPair pair = generator.generateKeyPair();
        X500Name subject = new X500Name(SUBJECT);
        BigInteger serial = new BigInteger(SERIAL_BITS, new SecureRandom()).add(BigInteger.ONE);
        X509Certificate certificate = new JcaX509CertificateConverter()
                .getCertificate(new JcaX509v3CertificateBuilder(
                                subject, serial, Date.from(FROM), Date.from(TO), subject, pair.getPublic())
                        .addExtension(
                                Extension.keyUsage,
                                true,
                                new KeyUsage(KeyUsage.digitalSignature | KeyUsage.nonRepudiation))
                        .build(new JcaContentSignerBuilder("SHA256withECDSA").build(pair.getPrivate())));
        KeyStore store = KeyStore.getInstance("PKCS12");
        store.load(null, null);
        store.setKeyEntry(ALIAS, pair.getPrivate(), PASSWORD.toCharArray(), new Certificate[] {certificate});
        return store;
    }
}
