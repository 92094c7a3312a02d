package dev.reelproof.pdf.signature;

import java.io.OutputStream;
import java.math.BigInteger;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.security.cert.X509Certificate;
import java.time.Instant;
import java.util.Date;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x509.BasicConstraints;
import org.bouncycastle.asn1.x509.ExtendedKeyUsage;
import org.bouncycastle.asn1.x509.Extension;
import org.bouncycastle.asn1.x509.KeyPurposeId;
import org.bouncycastle.asn1.x509.KeyUsage;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;

/** Keys of invented plants, their certificates and the files that hold them. */
public final class TestKeys {
    public static final Instant FROM = Instant.parse("2026-01-01T00:00:00Z");
    public static final Instant TO = Instant.parse("2027-01-01T00:00:00Z");
    public static final String PASSWORD = "secret";

    private TestKeys() {}

    /** A key with its certificate. */
    public record Keyed(KeyPair pair, X509Certificate certificate) {}

    private static KeyPair pair(String algorithm) throws Exception {
        KeyPairGenerator generator = KeyPairGenerator.getInstance(algorithm);
        generator.initialize(algorithm.equals("RSA") ? 2048 : 256);
        return generator.generateKeyPair();
    }

    private static String signing(KeyPair pair) {
        return pair.getPrivate().getAlgorithm().equals("RSA") ? "SHA256withRSA" : "SHA256withECDSA";
    }

    /** Vouches for plants, and for nobody else's word but its own. */
    public static Keyed authority() throws Exception {
        KeyPair pair = pair("EC");
        X500Name name = new X500Name("CN=Invented Authority");
        JcaX509v3CertificateBuilder builder = new JcaX509v3CertificateBuilder(
                name, BigInteger.ONE, Date.from(FROM), Date.from(TO), name, pair.getPublic());
        builder.addExtension(Extension.basicConstraints, true, new BasicConstraints(true));
        return new Keyed(
                pair,
                new JcaX509CertificateConverter()
                        .getCertificate(
                                builder.build(new JcaContentSignerBuilder(signing(pair)).build(pair.getPrivate()))));
    }

    /** A plant's key, with a certificate of the authority. */
    public static Keyed plant(Keyed authority, String algorithm) throws Exception {
        return issued(authority, algorithm, "CN=Invented Cable Works", new KeyUsage(KeyUsage.digitalSignature));
    }

    static Keyed issued(Keyed authority, String algorithm, String subject, KeyUsage usage) throws Exception {
        KeyPair pair = pair(algorithm);
        JcaX509v3CertificateBuilder builder = builder(authority, pair, subject);
        builder.addExtension(Extension.keyUsage, true, usage);
        return new Keyed(pair, signed(authority, builder));
    }

    /** A key that signs time stamps. */
    static Keyed timeStamps(Keyed authority) throws Exception {
        KeyPair pair = pair("RSA");
        JcaX509v3CertificateBuilder builder = builder(authority, pair, "CN=Invented Time Stamps");
        builder.addExtension(Extension.extendedKeyUsage, true, new ExtendedKeyUsage(KeyPurposeId.id_kp_timeStamping));
        return new Keyed(pair, signed(authority, builder));
    }

    private static JcaX509v3CertificateBuilder builder(Keyed authority, KeyPair pair, String subject) {
        return new JcaX509v3CertificateBuilder(
                authority.certificate(),
                BigInteger.valueOf(pair.getPublic().hashCode()).abs().add(BigInteger.TWO),
                Date.from(FROM),
                Date.from(TO),
                new X500Name(subject),
                pair.getPublic());
    }

    private static X509Certificate signed(Keyed authority, JcaX509v3CertificateBuilder builder) throws Exception {
        return new JcaX509CertificateConverter()
                .getCertificate(builder.build(new JcaContentSignerBuilder(signing(authority.pair()))
                        .build(authority.pair().getPrivate())));
    }

    /** A file with one key a name. */
    public static Path file(Path folder, Keyed authority, Keyed key, String... names) throws Exception {
        KeyStore store = KeyStore.getInstance("PKCS12");
        store.load(null, null);
        for (String name : names) {
            store.setKeyEntry(name, key.pair().getPrivate(), PASSWORD.toCharArray(), new Certificate[] {
                key.certificate(), authority.certificate()
            });
        }
        Path file = folder.resolve("plant-" + String.join("-", names) + ".p12");
        try (OutputStream out = Files.newOutputStream(file)) {
            store.store(out, PASSWORD.toCharArray());
        }
        return file;
    }
}
