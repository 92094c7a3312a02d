package dev.reelproof.app.seal;

import dev.reelproof.access.Action;
import dev.reelproof.access.Callers;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.pdf.InclusionProofJson;
import dev.reelproof.seal.CarriedProof;
import dev.reelproof.seal.InclusionProof;
import dev.reelproof.seal.LeafKind;
import dev.reelproof.seal.PublicSealKey;
import dev.reelproof.seal.SignedHead;
import dev.reelproof.store.access.AuditTrail;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.inject.Singleton;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Tells what the log says: its key, its heads, its proofs. */
@Singleton
public class ReadLog {
    private final KeepLog log;
    private final Plants plants;
    private final Callers callers;
    private final AuditTrail audit;

    ReadLog(KeepLog log, Plants plants, Callers callers, AuditTrail audit) {
        this.log = log;
        this.plants = plants;
        this.callers = callers;
        this.audit = audit;
    }

    /** The public key that knows heads. */
    public PublicSealKey key() {
        return log.key().open();
    }

    /** The newest head of each plant that has one. */
    public List<SignedHead> newestHeads() {
        return plants.served().stream()
                .map(log::newestHead)
                .flatMap(Optional::stream)
                .toList();
    }

    /**
     * Signs a plant's log now, for a person who wants to take the head away.
     *
     * @param plantNamed the plant; the caller's when none is named
     * @throws dev.reelproof.access.PermissionDeniedException when the caller may not read the audit trail
     */
    public SignedHead sign(@Nullable String plantNamed) {
        String plant = plants.named(plantNamed, "plant");
        callers.current().require(Action.READ_AUDIT, plant);
        QuarkusTransaction.requiringNew().run(() -> audit.write(plant, "log-signed", "log/" + plant, null, Map.of()));
        return log.sign(plant).orElseThrow();
    }

    /**
     * The proof that something is in a plant's log, as JSON.
     *
     * @throws NothingThereException when nothing like that was sealed
     */
    public String proof(@Nullable String plantNamed, LeafKind kind, String id) {
        String plant = plants.named(plantNamed, "plant");
        if (kind == LeafKind.AUDIT_ENTRY) {
            callers.current().require(Action.READ_AUDIT, plant);
        }
        InclusionProof proof = log.prove(plant, kind, id)
                .orElseThrow(() -> new NothingThereException(
                        "There is no " + kind.word() + " '" + id + "' in the log of plant " + plant + "."));
        return InclusionProofJson.write(new CarriedProof(proof, key()));
    }
}
