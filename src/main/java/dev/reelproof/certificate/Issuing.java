package dev.reelproof.certificate;

import java.time.OffsetDateTime;
import java.util.Objects;

/**
 * Who issues a certificate, when and under which number.
 *
 * @param number the certificate's number
 * @param issue which issue of that number, from 1
 * @param issued when it is issued
 * @param plant the plant that issues it
 */
public record Issuing(CertificateNumber number, int issue, OffsetDateTime issued, Plant plant) {

    public Issuing {
        Objects.requireNonNull(number, "a certificate needs a number");
        Objects.requireNonNull(issued, "a certificate needs the time of its issue");
        Objects.requireNonNull(plant, "a certificate needs a plant");
        if (!(issue >= 1)) {
            throw new IllegalArgumentException("issues count from 1, not " + issue);
        }
    }
}
