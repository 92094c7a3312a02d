package dev.reelproof.store.limits;

import dev.reelproof.limit.UncertaintyModel;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Optional;
import org.hibernate.Session;

/** The revisions of uncertainty models that were judged with, as their files stood then: kept as limit sets are. */
@ApplicationScoped
public class UncertaintyModelArchive {
    private final Session session;

    UncertaintyModelArchive(Session session) {
        this.session = session;
    }

    /**
     * Refuses a revision whose file is not the one that was judged with.
     *
     * @throws IllegalStateException when it was edited after it was used
     */
    @Transactional
    public void requireUnchanged(UncertaintyModel model) {
        used(model.id(), model.revision()).ifPresent(used -> requireSame(used, model));
    }

    /** Keeps a revision as used; nothing more happens when it already is. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void use(UncertaintyModel model, Instant now) {
        session.createNativeMutationQuery(
                        """
                        insert into uncertainty_model_revision (id, revision, sha256, text, used)
                        values (:id, :revision, :sha256, :text, :now) on conflict do nothing""")
                .setParameter("id", model.id())
                .setParameter("revision", model.revision())
                .setParameter("sha256", model.sha256())
                .setParameter("text", model.text())
                .setParameter("now", now)
                .executeUpdate();
        requireSame(used(model.id(), model.revision()).orElseThrow(), model);
    }

    /** The file of a revision as it was when it was first judged with; empty when it never was. */
    @Transactional
    public Optional<String> text(String id, int revision) {
        return used(id, revision).map(UsedRevision::text);
    }

    private Optional<UsedRevision> used(String id, int revision) {
        return session.createNativeQuery(
                        "select sha256, text, used from uncertainty_model_revision where id = :id and revision = :revision",
                        UsedRevision.class)
                .setParameter("id", id)
                .setParameter("revision", revision)
                .uniqueResultOptional();
    }

    private static void requireSame(UsedRevision used, UncertaintyModel model) {
        if (!used.sha256().equals(model.sha256())) {
            throw new IllegalStateException("Uncertainty model " + model.words()
                    + " is not the file that reels were judged with (digest " + model.sha256() + ", used since "
                    + used.used() + " with digest " + used.sha256()
                    + "). Restore that file and put the change, or the plant's own model, into a higher revision.");
        }
    }
}
