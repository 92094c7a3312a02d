package dev.reelproof.certificate;

import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What a plant declares its certificates to be.
 *
 * <p>Source of the kinds of inspection document: EN 10204:2004, clauses 3.2 and 4.1 (from memory); of the report: ISO/IEC 17025:2017, 7.8
 * (from memory but for 7.8.2.1). Whether the plant may declare what it declares is for the plant to know.
 */
public enum CertificateType {
    /** A certificate of the plant's own kind, by no standard. */
    TEST_CERTIFICATE(null, false),
    /** Test report: that the product is what the order asks for, with results. */
    TEST_REPORT_2_2("EN 10204:2004, 2.2", true),
    /** Inspection certificate: the same, authorised by somebody whom production does not direct, with results of this very product. */
    INSPECTION_CERTIFICATE_3_1("EN 10204:2004, 3.1", true),
    /** Report of a test, with a statement of conformity. */
    TEST_REPORT_17025("ISO/IEC 17025:2017, 7.8", false);

    private final @Nullable String standard;
    private final boolean saysThatItMeetsTheOrder;

    CertificateType(@Nullable String standard, boolean saysThatItMeetsTheOrder) {
        this.standard = standard;
        this.saysThatItMeetsTheOrder = saysThatItMeetsTheOrder;
    }

    /** The standard that it is declared by; empty for one of the plant's own kind. */
    public Optional<String> standard() {
        return Optional.ofNullable(standard);
    }

    /** Whether it says that the product is what the order asks for. */
    boolean saysThatItMeetsTheOrder() {
        return saysThatItMeetsTheOrder;
    }

    /** The word used in settings. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
