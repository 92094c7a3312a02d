package dev.reelproof.app.certificate;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.nio.file.Path;
import java.util.Optional;

/** The settings of what leaves the house on paper: who signs, and where it can be verified. */
@ConfigMapping(prefix = "reelproof")
public interface PaperSettings {

    /** The address at which others reach this service, such as {@code https://reelproof.example}. */
    Optional<String> address();

    /** The key that certificates are signed with. */
    Signing signing();

    /** A key in a file, or in a device; neither is a demo key. */
    interface Signing {

        /** A PKCS#12 file. */
        Optional<Path> keystore();

        /** The library of a device that speaks PKCS#11. */
        Optional<Path> pkcs11Library();

        /** Which of the device's slots, from 0. */
        @WithDefault("0")
        int pkcs11Slot();

        /** The password of the file, or the PIN of the device. */
        Optional<String> password();

        /** Which key, where there are several. */
        Optional<String> alias();

        /** The address of a time-stamp authority (RFC 3161). */
        Optional<String> timestamp();
    }
}
