package dev.reelproof.app.concession;

import dev.reelproof.record.concession.Concession;
import dev.reelproof.record.concession.Terms;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** How the audit trail speaks of concessions. */
final class ConcessionAudit {
    private ConcessionAudit() {}

    static String subject(long id) {
        return "concession/" + id;
    }

    /**
     * What is conceded of what, and who asked for it.
     *
     * @param questioned the certificates that it puts in question
     */
    static Map<String, Object> details(Concession concession, List<String> questioned) {
        Map<String, Object> details = new TreeMap<>(Map.of(
                "kind", concession.terms().kind().word(),
                "reel", concession.reel(),
                "record", concession.record().toString(),
                "requestedBy", concession.requestedBy().name()));
        if (concession.terms() instanceof Terms.Regrade regrade) {
            details.put("product", regrade.product());
            details.put("fromProduct", concession.before().product());
        }
        if (concession.terms() instanceof Terms.Shorten shorten) {
            details.put("length", shorten.value() + " " + shorten.unit());
            details.put(
                    "fromLength",
                    concession.before().length() + " " + concession.before().unit());
        }
        if (!questioned.isEmpty()) {
            details.put("questionedCertificates", questioned);
        }
        return details;
    }
}
