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
        row(model.id(), model.revision()).ifPresent(used -> requireSame(used, model));
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
        requireSame(row(model.id(), model.revision()).orElseThrow(), model);
    }

    /** The file of a revision as it was when it was first judged with; empty when it never was. */
    @Transactional
    public Optional<String> text(String id, int revision) {
        return row(id, revision).map(row -> row.text);
    }

    private static Optional<UncertaintyModelRow> row(String id, int revision) {
        return UncertaintyModelRow.<UncertaintyModelRow>find("id = ?1 and revision = ?2", id, revision)
                .firstResultOptional();
    }

    private static void requireSame(UncertaintyModelRow used, UncertaintyModel model) {
        if (!used.sha256.equals(model.sha256())) {
            throw new IllegalStateException("Uncertainty model " + model.words()
                    + " is not the file that reels were judged with (digest " + model.sha256() + ", used since "
                    + used.used + " with digest " + used.sha256
                    + "). Restore that file and put the change, or the plant's own model, into a higher revision.");
        }
    }
}
