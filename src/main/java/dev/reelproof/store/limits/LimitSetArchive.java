package dev.reelproof.store.limits;

import dev.reelproof.limit.LimitSet;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Optional;
import org.hibernate.Session;

/** The revisions of limit sets that were judged by, as their files stood then: a revision is never edited once used. */
@ApplicationScoped
public class LimitSetArchive {
    private final Session session;

    LimitSetArchive(Session session) {
        this.session = session;
    }

    /**
     * Refuses a revision whose file is not the one that was judged by.
     *
     * @throws IllegalStateException when it was edited after it was used
     */
    @Transactional
    public void requireUnchanged(LimitSet limitSet) {
        used(limitSet.id(), limitSet.revision()).ifPresent(used -> requireSame(used, limitSet));
    }

    /** Keeps a revision as used; nothing more happens when it already is. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void use(LimitSet limitSet, Instant now) {
        session.createNativeMutationQuery(
                        """
                        insert into limit_set_revision (id, revision, sha256, text, used)
                        values (:id, :revision, :sha256, :text, :now) on conflict do nothing""")
                .setParameter("id", limitSet.id())
                .setParameter("revision", limitSet.revision())
                .setParameter("sha256", limitSet.sha256())
                .setParameter("text", limitSet.text())
                .setParameter("now", now)
                .executeUpdate();
        requireSame(used(limitSet.id(), limitSet.revision()).orElseThrow(), limitSet);
    }

    /** The file of a revision as it was when it was first judged by; empty when it never was. */
    @Transactional
    public Optional<String> text(String id, int revision) {
        return used(id, revision).map(UsedRevision::text);
    }

    private Optional<UsedRevision> used(String id, int revision) {
        return session.createNativeQuery(
                        "select sha256, text, used from limit_set_revision where id = :id and revision = :revision",
                        UsedRevision.class)
                .setParameter("id", id)
                .setParameter("revision", revision)
                .uniqueResultOptional();
    }

    private static void requireSame(UsedRevision used, LimitSet limitSet) {
        if (!used.sha256().equals(limitSet.sha256())) {
            throw new IllegalStateException("Limit set " + limitSet.id() + " revision " + limitSet.revision()
                    + " was edited after reels were judged by it (digest " + limitSet.sha256() + ", used since "
                    + used.used() + " with digest " + used.sha256()
                    + "). Restore that file and put the change into a new revision.");
        }
    }
}
