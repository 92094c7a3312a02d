package dev.reelproof.app.access;

import dev.reelproof.access.Action;
import dev.reelproof.access.AuditEntry;
import dev.reelproof.access.AuditFilter;
import dev.reelproof.access.Callers;
import dev.reelproof.app.Plants;
import dev.reelproof.store.access.AuditTrail;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads the audit trail. */
@ApplicationScoped
public class ReadAudit {
    private final AuditTrail audit;
    private final Callers callers;
    private final Plants plants;

    ReadAudit(AuditTrail audit, Callers callers, Plants plants) {
        this.audit = audit;
        this.callers = callers;
        this.plants = plants;
    }

    /**
     * Refuses a caller who may not read the audit trail of a plant.
     *
     * @param plantNamed the plant; the caller's, else the home plant, when none is named
     * @return the plant
     * @throws dev.reelproof.access.PermissionDeniedException when the caller may not
     */
    public String requirePermission(@Nullable String plantNamed) {
        String plant = plants.named(plantNamed, "plant");
        callers.current().require(Action.READ_AUDIT, plant);
        return plant;
    }

    /** Entries of a plant, newest first; refuses as {@link #requirePermission}. */
    public List<AuditEntry> entries(@Nullable String plantNamed, AuditFilter filter, int limit) {
        return audit.entries(requirePermission(plantNamed), filter, limit);
    }
}
