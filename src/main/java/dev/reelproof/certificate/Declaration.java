package dev.reelproof.certificate;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What a plant declares its certificates to be, who authorises them, and how they are printed.
 *
 * @param type what they are
 * @param language their language
 * @param sheet the size of their pages
 * @param units the units of lengths and temperatures
 * @param authorised who authorises them; null where that is written by hand
 * @param needsLengthMarks whether none is issued of a reel whose length marks nobody stated
 */
public record Declaration(
        CertificateType type,
        Locale language,
        Sheet sheet,
        UnitSystem units,
        @Nullable Signatory authorised,
        boolean needsLengthMarks) {
    /** A certificate of the plant's own kind, in English on A4. */
    public static final Declaration PLAIN =
            new Declaration(CertificateType.TEST_CERTIFICATE, Locale.ENGLISH, Sheet.A4, UnitSystem.BOTH, null, false);

    /** The size of a page. */
    public enum Sheet {
        A4,
        LETTER
    }

    /** The units that lengths and temperatures are printed in; limits keep the units of their source. */
    public enum UnitSystem {
        METRIC,
        US_CUSTOMARY,
        /** As sent, with the metric one where that is another. */
        BOTH
    }

    /**
     * Who authorises for the plant.
     *
     * @param name the person
     * @param role as what
     */
    public record Signatory(String name, String role) {

        public Signatory {
            if (name == null || name.isBlank() || role == null || role.isBlank()) {
                throw new IllegalArgumentException("who authorises has a name and a role");
            }
        }
    }
}
