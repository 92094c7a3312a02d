package dev.reelproof.certificate;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a certificate of a declared type must say and nobody has stated. It is asked before the certificate is issued, so that no paper
 * says "not stated".
 *
 * <p>Source: EN 10204:2004, 3.2 and 4.1, for the order and who authorises (from memory); ISO/IEC 17025:2017, 7.8.2.1 e) and o) for customer
 * and who authorises (read); bay, tester and instruments: common practice, no source.
 */
public final class Completeness {
    private Completeness() {}

    /** What is missing, each in a few words; nothing for a certificate of the plant's own kind. */
    public static List<String> missing(Declaration declaration, Item item, TestConditions test) {
        CertificateType type = declaration.type();
        if (type == CertificateType.TEST_CERTIFICATE) {
            return List.of();
        }
        List<String> missing = new ArrayList<>();
        need(missing, item.customer(), "the customer");
        if (type.saysThatItMeetsTheOrder()) {
            need(missing, item.order(), "the order");
        }
        need(missing, test.station(), "the test bay");
        need(missing, test.technician(), "who tested");
        if (test.equipment().isEmpty()) {
            missing.add("the instruments");
        }
        if (declaration.authorised() == null) {
            missing.add("who authorises for the plant, by name and role (a setting)");
        }
        return missing;
    }

    private static void need(List<String> missing, @Nullable String stated, String what) {
        if (stated == null || stated.isBlank()) {
            missing.add(what);
        }
    }
}
