package dev.reelproof.certificate;

import java.time.OffsetDateTime;
import org.jspecify.annotations.Nullable;

/**
 * Which certificates a list shows; what is null asks for nothing.
 *
 * @param text a part of number, reel, order or customer, whatever its case; empty for all
 * @param reel exactly this reel's
 * @param order exactly this order's
 * @param customer exactly this customer's
 * @param from issued then or later
 * @param before issued earlier
 * @param after those that follow this one in the list
 */
public record CertificateFilter(
        String text,
        @Nullable String reel,
        @Nullable String order,
        @Nullable String customer,
        @Nullable OffsetDateTime from,
        @Nullable OffsetDateTime before,
        @Nullable IssuedCertificate after) {

    /** The certificates of an order, issued within a time. */
    public static CertificateFilter ofOrder(
            String order, @Nullable OffsetDateTime from, @Nullable OffsetDateTime before) {
        return new CertificateFilter("", null, order, null, from, before, null);
    }

    /** The certificates of a customer, issued within a time. */
    public static CertificateFilter ofCustomer(
            String customer, @Nullable OffsetDateTime from, @Nullable OffsetDateTime before) {
        return new CertificateFilter("", null, null, customer, from, before, null);
    }
}
