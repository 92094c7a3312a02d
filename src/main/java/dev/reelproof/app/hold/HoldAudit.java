package dev.reelproof.app.hold;

import dev.reelproof.genealogy.hold.HoldTarget;
import java.util.Map;
import java.util.TreeMap;

/** How the audit trail speaks of holds. */
final class HoldAudit {
    private HoldAudit() {}

    static String subject(long id) {
        return "hold/" + id;
    }

    /** What is held. */
    static Map<String, Object> details(HoldTarget target) {
        Map<String, Object> details = new TreeMap<>(Map.of(target.what().word(), target.name()));
        if (target.from() != null && target.to() != null) {
            details.put("from", target.from().toString());
            details.put("to", target.to().toString());
        }
        return details;
    }
}
