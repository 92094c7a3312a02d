package dev.reelproof.certificate;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a certificate of a declared type must say and nobody has stated. It is asked before the certificate is issued, so that no paper
 * says "not stated".
 *
 * <p>Source: EN 10204:2004, 3.2 and 4.1, for the order and who authorises (from memory); ISO/IEC 17025:2017, 7.8.2.1 e) and o) for customer
 * and who authorises (read); bay, tester, instruments and length marks: common practice, no source.
 */
public final class Completeness {
    private Completeness() {}

    /** What is missing, each in a few words; of a certificate of the plant's own kind only what the plant itself asks for. */
    public static List<String> missing(Declaration declaration, Item item, TestConditions test) {
        List<String> missing = new ArrayList<>();
        if (declaration.type() != CertificateType.TEST_CERTIFICATE) {
            needOfItsKind(missing, declaration, item, test);
        }
        if (declaration.needsLengthMarks() && item.lengthMarks() == null) {
            missing.add("the length marks of the reel");
        }
        return missing;
    }

    private static void needOfItsKind(List<String> missing, Declaration declaration, Item item, TestConditions test) {
        need(missing, item.customer(), "the customer");
        if (declaration.type().saysThatItMeetsTheOrder()) {
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
    }

    private static void need(List<String> missing, @Nullable String stated, String what) {
        if (stated == null || stated.isBlank()) {
            missing.add(what);
        }
    }
}
