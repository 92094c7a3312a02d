package dev.reelproof.pdf;

import java.util.Optional;

/**
 * What a certificate gives its reader to check it by.
 *
 * @param service the address of the service that verifies, without a slash at its end; empty when the plant names none
 * @param result the result as data, attached to the PDF; empty when none is attached
 * @param signing whose key signs the finished PDF
 */
public record Provenance(Optional<String> service, Optional<ResultAttachment> result, Signing signing) {

    /** Nothing to check by. */
    public static final Provenance NONE = new Provenance(Optional.empty(), Optional.empty(), Signing.NONE);

    private static final String PAGE = "/verify.html?number=";

    /** Whose key signs. */
    public enum Signing {
        NONE,
        PLANT,
        DEMO
    }

    /** The address of the page that says whether the certificate of this number is genuine and current. */
    Optional<String> page(String number) {
        return service.map(address -> address + PAGE + number);
    }
}
