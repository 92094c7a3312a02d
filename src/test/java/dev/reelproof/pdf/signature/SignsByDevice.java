package dev.reelproof.pdf.signature;

import dev.reelproof.pdf.SignedSamples;
import java.math.BigInteger;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.KeyStore;
import java.security.Provider;
import java.security.Security;
import java.security.cert.Certificate;
import java.security.cert.X509Certificate;
import java.time.Instant;
import java.util.Date;
import java.util.Optional;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;

/** Makes a key in a software device, which a setting of its own process points to, and signs with it through PKCS#11. */
final class SignsByDevice {
    private static final String PIN = "1234";

    private SignsByDevice() {}

    public static void main(String... arguments) throws Exception {
        Path library = Path.of(arguments[0]);
        int made = new ProcessBuilder(
                        "softhsm2-util", "--init-token", "--free", "--label", "plant", "--pin", PIN, "--so-pin", "4321")
                .inheritIO()
                .start()
                .waitFor();
        if (made != 0) {
            throw new IllegalStateException("no token");
        }
        // Before anybody signs in: a device that is open asks no PIN.
        try {
            KeyStores.device(library, 0, "9999", Optional.empty());
        } catch (CannotSignException e) {
            System.out.println(e.getMessage());
        }
        Provider provider = Security.getProvider("SunPKCS11")
                .configure("--name=making\nlibrary=" + library + "\nslotListIndex=0\nattributes=compatibility\n");
        KeyStore store = KeyStore.getInstance("PKCS11", provider);
        store.load(null, PIN.toCharArray());
        KeyPairGenerator generator = KeyPairGenerator.getInstance("RSA", provider);
        generator.initialize(2048);
        KeyPair pair = generator.generateKeyPair();
        X500Name name = new X500Name("CN=Invented Device");
        X509Certificate certificate = new JcaX509CertificateConverter()
                .getCertificate(new JcaX509v3CertificateBuilder(
                                name,
                                BigInteger.ONE,
                                Date.from(TestKeys.FROM),
                                Date.from(TestKeys.TO),
                                name,
                                pair.getPublic())
                        .build(new JcaContentSignerBuilder("SHA256withRSA")
                                .setProvider(provider)
                                .build(pair.getPrivate())));
        store.setKeyEntry("plant", pair.getPrivate(), null, new Certificate[] {certificate});
        SigningKey key = KeyStores.device(library, 0, PIN, Optional.empty());
        Files.write(
                Path.of(arguments[1]),
                new PdfSigner(key, Optional.empty())
                        .sign(SignedSamples.unsigned(), Instant.parse("2026-03-02T15:20:00Z")));
    }
}
