package dev.reelproof.certificate;

import java.time.OffsetDateTime;

/**
 * A collective certificate as issued; its PDF is kept beside it.
 *
 * @param plant the plant
 * @param content what it says
 * @param issued when
 * @param pdfSha256 digest of the PDF, hexadecimal
 */
public record IssuedCollective(String plant, CollectiveContent content, OffsetDateTime issued, String pdfSha256) {

    /** Unique among all certificates of the plant. */
    public String number() {
        return content.number();
    }
}
