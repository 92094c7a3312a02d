package dev.reelproof.app.concession;

import dev.reelproof.access.Action;
import dev.reelproof.access.Caller;
import dev.reelproof.access.Callers;
import dev.reelproof.access.Role;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.record.concession.Concession;
import dev.reelproof.record.concession.ConcessionRule;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.concession.Concessions;
import dev.reelproof.store.result.Records;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Refuses a concession; the reel stays as it is. */
@ApplicationScoped
public class RefuseConcession {
    private final Concessions concessions;
    private final Records records;
    private final Plants plants;
    private final Callers callers;
    private final AuditTrail audit;
    private final Clock clock;

    RefuseConcession(
            Concessions concessions, Records records, Plants plants, Callers callers, AuditTrail audit, Clock clock) {
        this.concessions = concessions;
        this.records = records;
        this.plants = plants;
        this.callers = callers;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Refuses, as the current caller.
     *
     * @param plantNamed the plant; the caller's when none is named
     * @return the concession as it stands now
     * @throws dev.reelproof.access.PermissionDeniedException when the caller may not, or is no person
     * @throws NothingThereException when the plant has none of that number
     * @throws dev.reelproof.record.concession.ConcessionRefusedException when the rule forbids it
     */
    @Transactional
    public Concession refuse(@Nullable String plantNamed, long id, String reason) {
        String plant = plants.forAction(Action.DECIDE_CONCESSION, plantNamed, "plant");
        Caller caller = callers.current();
        caller.requirePerson();
        concessions.lockForDecision(plant, id);
        Concession asked = concessions.byId(plant, id).orElseThrow(() -> FindConcessions.unknown(plant, id));
        ConcessionRule.requireMayDecide(
                asked,
                records.newestIdOf(plant, asked.reel()).orElseThrow(),
                caller.isPerson(asked.requestedBy().name()));
        Concession.Decision refusal = new Concession.Decision(
                false,
                new Concession.Person(caller.name(), Role.QUALITY_MANAGER.word()),
                OffsetDateTime.now(clock),
                reason,
                null);
        concessions.keep(plant, asked, refusal);
        audit.write(
                plant,
                "concession-refused",
                ConcessionAudit.subject(id),
                reason,
                ConcessionAudit.details(asked, List.of()));
        return asked.decided(refusal);
    }
}
