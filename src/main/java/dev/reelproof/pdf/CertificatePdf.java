package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Optional;

/**
 * Draws a certificate: facts, verdict and the table of requirements first, then the plots.
 *
 * <p>What it must carry follows the list of ISO/IEC 17025:2017, 7.8.2.1 (read): title, plant and address, an identification on
 * each page and a clear end, customer, item, method, dates, results with units, "relates only to the item tested", who authorises.
 */
public final class CertificatePdf {
    private static final int MOST_PAGES = 3;

    private CertificatePdf() {}

    /**
     * Draws a certificate as PDF/A-3a and PDF/UA-1; the same content gives the same bytes under one version of Java and of this program.
     *
     * <p>One to three pages of A4. Only a content whose table alone fills more is given more pages: nothing is left out.
     */
    public static byte[] render(CertificateContent content) {
        try (CertificateDraft draft = draft(content)) {
            return draft.finish(content);
        }
    }

    /** As {@link #draft(CertificateContent, Provenance, Optional)}, with no sign and nothing to check it by. */
    static CertificateDraft draft(CertificateContent content) {
        return draft(content, Provenance.NONE, Optional.empty());
    }

    /**
     * Draws all of a certificate but its number, its issue and the time of its issue; the caller closes the draft.
     *
     * @param provenance what the reader may check it by
     * @param logo the plant's sign; empty for none
     */
    public static CertificateDraft draft(CertificateContent content, Provenance provenance, Optional<Logo> logo) {
        try {
            return CertificateDraft.of(content, provenance, logo, MOST_PAGES);
        } catch (IOException e) {
            throw new UncheckedIOException("the certificate of reel " + content.reel() + " cannot be drawn", e);
        }
    }
}
