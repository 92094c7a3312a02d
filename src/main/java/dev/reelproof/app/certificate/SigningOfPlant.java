package dev.reelproof.app.certificate;

import dev.reelproof.app.Settings;
import dev.reelproof.pdf.Provenance;
import dev.reelproof.pdf.signature.CannotSignException;
import dev.reelproof.pdf.signature.DemoKey;
import dev.reelproof.pdf.signature.KeyStores;
import dev.reelproof.pdf.signature.PdfSigner;
import dev.reelproof.pdf.signature.SigningKey;
import dev.reelproof.pdf.signature.TimeStampAuthority;
import io.quarkus.runtime.StartupEvent;
import io.quarkus.runtime.configuration.ConfigurationException;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.time.Clock;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/** Signs as the settings say: with the plant's key in a file or a device, else with a demo key that is made at its first use. */
@ApplicationScoped
public class SigningOfPlant {
    private static final Logger LOG = Logger.getLogger(SigningOfPlant.class);

    private final PaperSettings.Signing settings;
    private final Settings installation;
    private final Clock clock;
    private @Nullable PdfSigner signer;

    SigningOfPlant(PaperSettings settings, Settings installation, Clock clock) {
        this.settings = settings.signing();
        this.installation = installation;
        this.clock = clock;
    }

    /** A key that is configured is opened at the start: who configured it wrongly learns it then. The demo key is left for later. */
    void start(@Observes StartupEvent event) {
        if (signing() == Provenance.Signing.DEMO) {
            return;
        }
        try {
            SigningKey key = signer().key();
            try {
                key.requireValidAt(Instant.now(clock));
            } catch (CannotSignException e) {
                LOG.error("No certificate can be issued: " + e.getMessage());
            }
        } catch (CannotSignException e) {
            throw new ConfigurationException(Objects.requireNonNull(e.getMessage()), e);
        }
    }

    /** Whose key signs. */
    public Provenance.Signing signing() {
        return settings.keystore().isPresent() || settings.pkcs11Library().isPresent()
                ? Provenance.Signing.PLANT
                : Provenance.Signing.DEMO;
    }

    /**
     * Finds out whether a certificate could be signed now, as far as that shows without signing.
     *
     * @throws CannotBeSignedException when not
     */
    public void requireReady() {
        try {
            signer().key().requireValidAt(Instant.now(clock));
        } catch (CannotSignException e) {
            throw refused(e);
        }
    }

    /**
     * The PDF with the plant's signature appended. It may take as long as a device does; the caller holds no lock.
     *
     * @throws CannotBeSignedException when key, device or time-stamp authority do not answer
     */
    public byte[] sign(byte[] pdf) {
        try {
            return signer().sign(pdf, Instant.now(clock));
        } catch (CannotSignException e) {
            throw refused(e);
        }
    }

    /** Whatever was wrong, it is looked for anew next time: a file may be replaced, a device plugged in again. */
    private synchronized CannotBeSignedException refused(CannotSignException e) {
        signer = null;
        return new CannotBeSignedException(Objects.requireNonNull(e.getMessage()), e);
    }

    private synchronized PdfSigner signer() {
        if (signer == null) {
            signer = new PdfSigner(key(), settings.timestamp().map(TimeStampAuthority::new));
        }
        return signer;
    }

    private SigningKey key() {
        if (settings.keystore().isPresent() && settings.pkcs11Library().isPresent()) {
            throw new CannotSignException("Both a key file (REELPROOF_SIGNING_KEYSTORE) and a device"
                    + " (REELPROOF_SIGNING_PKCS11_LIBRARY) are configured; leave one out.");
        }
        Optional<String> alias = settings.alias();
        String password = settings.password().orElse("");
        if (settings.keystore().isPresent()) {
            return KeyStores.file(settings.keystore().get(), password, alias);
        }
        if (settings.pkcs11Library().isPresent()) {
            return KeyStores.device(settings.pkcs11Library().get(), settings.pkcs11Slot(), password, alias);
        }
        return DemoKey.in(installation.data());
    }
}
