package dev.reelproof.app.access;

import dev.reelproof.access.Account;
import dev.reelproof.access.Callers;
import dev.reelproof.app.Plants;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.access.Sessions;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.Map;

/** Signs the caller out. */
@ApplicationScoped
public class SignOut {
    private final Sessions sessions;
    private final Callers callers;
    private final Plants plants;
    private final AuditTrail audit;
    private final Clock clock;

    SignOut(Sessions sessions, Callers callers, Plants plants, AuditTrail audit, Clock clock) {
        this.sessions = sessions;
        this.callers = callers;
        this.plants = plants;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Ends the caller's session.
     *
     * @param session the digest of its secret
     */
    @Transactional
    public void signOut(String session) {
        sessions.end(session, clock.instant());
        audit.write(
                plants.home(), "signed-out", Account.subject(callers.current().name()), null, Map.of());
    }
}
