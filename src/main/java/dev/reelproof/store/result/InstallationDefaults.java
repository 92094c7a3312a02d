package dev.reelproof.store.result;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import org.hibernate.Session;

/** What holds where the configuration says nothing, settled when the installation began. */
@ApplicationScoped
public class InstallationDefaults {
    private final Session session;

    InstallationDefaults(Session session) {
        this.session = session;
    }

    /** Whether every result must name its reel. */
    @Transactional
    public boolean requiresReel() {
        return value("reel-required");
    }

    /** Whether every test of a reel from the second on needs a reason. */
    @Transactional
    public boolean requiresRetestReason() {
        return value("retest-reason-required");
    }

    private boolean value(String name) {
        return session.createNativeQuery("select value from installation_default where name = :name", Boolean.class)
                .setParameter("name", name)
                .getSingleResult();
    }
}
