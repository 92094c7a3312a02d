package dev.reelproof.app.seal;

import dev.reelproof.app.ConflictException;
import dev.reelproof.app.Plants;
import dev.reelproof.app.Settings;
import dev.reelproof.pdf.InclusionProofJson;
import dev.reelproof.seal.CarriedProof;
import dev.reelproof.seal.InclusionProof;
import dev.reelproof.seal.LeafKind;
import dev.reelproof.seal.SealKey;
import dev.reelproof.seal.SignedHead;
import dev.reelproof.store.seal.HeadsFile;
import dev.reelproof.store.seal.LogReading;
import dev.reelproof.store.seal.LogSequence;
import dev.reelproof.store.seal.LogSetBackException;
import dev.reelproof.store.seal.SealKeyFile;
import dev.reelproof.store.seal.Sealing;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.inject.Singleton;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/** Keeps the log of each plant: gives leaves their places, signs heads and writes them outside the database, gives proofs. */
@Singleton
public class KeepLog {
    private static final Logger LOG = Logger.getLogger(KeepLog.class);

    /** Steps towards a proof: a row that is committed is in the log after the first, or the log cannot go on. */
    private static final int MOST_STEPS = 3;

    private final Plants plants;
    private final LogSequence sequence;
    private final LogReading reading;
    private final Sealing sealing;
    private final Clock clock;
    private final SealFiles files;
    private final HeadsFile heads;
    private final Set<String> begun = ConcurrentHashMap.newKeySet();
    private final Set<String> setBack = ConcurrentHashMap.newKeySet();
    private @Nullable SealKey read;

    KeepLog(
            Plants plants,
            Settings settings,
            SealSettings sealSettings,
            LogSequence sequence,
            LogReading reading,
            Sealing sealing,
            Clock clock) {
        this.plants = plants;
        this.sequence = sequence;
        this.reading = reading;
        this.sealing = sealing;
        this.clock = clock;
        this.files = SealFiles.of(settings.data(), sealSettings.key(), sealSettings.heads());
        this.heads = new HeadsFile(files.heads());
    }

    /** The key that signs heads, made when there is none yet. */
    public synchronized SealKey key() {
        SealKey key = read;
        if (key == null) {
            key = SealKeyFile.readOrMake(files.key());
            read = key;
        }
        return key;
    }

    /** The file of the heads outside the database. */
    public HeadsFile heads() {
        return heads;
    }

    /** Begins the logs of all plants that have none, and signs each as it stands, unless it was set back. */
    public void begin() {
        Set<String> all = new TreeSet<>(plants.served());
        all.addAll(sequence.plantsWithRows());
        for (String plant : all) {
            appendAll(plant);
            trySigning(plant);
        }
    }

    /** Gives everything that waits its place. */
    public void append() {
        sequence.waitingPlants().forEach(this::appendAll);
    }

    /** Signs what came since the last head, at each plant, and writes it outside; a log that was set back is reported, once. */
    public void signAll() {
        append();
        begun.forEach(this::trySigning);
    }

    private void appendAll(String plant) {
        if (!hasBegun(plant)) {
            return;
        }
        while (sequence.append(plant) > 0) {
            // The next ones.
        }
    }

    private boolean hasBegun(String plant) {
        if (begun.contains(plant)) {
            return true;
        }
        try {
            sequence.begin(plant, heads)
                    .ifPresent(taken -> LOG.infof(
                            "The log of plant %s begins. Rows that were there before it, taken in as they were found: %d",
                            plant, taken));
            begun.add(plant);
            return true;
        } catch (LogSetBackException e) {
            report(plant, e);
            return false;
        }
    }

    private void trySigning(String plant) {
        try {
            sequence.sign(plant, key(), heads, clock.instant());
        } catch (LogSetBackException e) {
            report(plant, e);
        }
    }

    private void report(String plant, LogSetBackException cause) {
        if (setBack.add(plant)) {
            LOG.errorf(
                    "%s No head of plant %s is signed until this is cleared up. If the database was restored on purpose,"
                            + " keep that file as evidence under another name and start again.",
                    cause.sentence(), plant);
        }
    }

    /**
     * Signs a plant's log as it stands.
     *
     * @throws ConflictException when the log is not the one of the newest head outside
     */
    public Optional<SignedHead> sign(String plant) {
        try {
            appendAll(plant);
            return sequence.sign(plant, key(), heads, clock.instant());
        } catch (LogSetBackException e) {
            throw new ConflictException(e.sentence());
        }
    }

    /** Signs for a proof: with a head a certificate, the file outside would grow as the certificates do. */
    private void signInside(String plant) {
        try {
            appendAll(plant);
            sequence.signInside(plant, key(), heads, clock.instant());
        } catch (LogSetBackException e) {
            throw new ConflictException(e.sentence());
        }
    }

    /** The newest head of a plant; empty when none was signed. */
    public Optional<SignedHead> newestHead(String plant) {
        return reading.newestHead(plant);
    }

    /**
     * The proof that something committed is in the log; it is given its place and a head is signed if need be. By the earliest head over
     * it, so that the proof of a leaf is always the same.
     *
     * @param id of an upload or a record its id, of a certificate number, slash, issue, of an audit entry its number
     * @return empty when nothing like that was sealed
     * @throws ConflictException when no head may be signed, because the log was set back
     */
    public Optional<InclusionProof> prove(String plant, LeafKind kind, String id) {
        for (int i = 0; i < MOST_STEPS; i++) {
            switch (reading.state(plant, kind, id)) {
                case UNKNOWN -> {
                    return Optional.empty();
                }
                case WAITING, IN_LOG -> signInside(plant);
                case PROVEN -> {
                    return reading.proof(plant, kind, id);
                }
            }
        }
        throw new IllegalStateException("The log of plant " + plant + " does not come to " + kind.word() + " " + id);
    }

    /**
     * Seals a file that a certificate is going to carry, by its digest, and proves it: who has file and proof can check both alone. In
     * transactions of its own, so it stays sealed whatever becomes of the certificate. The same file has one leaf, and one proof.
     *
     * @param sha256 of the file, in hexadecimal
     * @throws ConflictException when no head may be signed, because the log was set back
     */
    public InclusionProof proveAttachment(String plant, String sha256) {
        QuarkusTransaction.requiringNew().run(() -> sealing.sealAttachment(plant, sha256));
        return prove(plant, LeafKind.ATTACHMENT, sha256).orElseThrow();
    }

    /**
     * What a certificate carries so that its attached file can be found in the plant's log without the plant: {@link #proveAttachment}
     * with the log's public key, as JSON in UTF-8. Always the same for the same file.
     */
    public byte[] proofToCarry(String plant, String sha256) {
        return InclusionProofJson.write(new CarriedProof(proveAttachment(plant, sha256), key().open()))
                .getBytes(StandardCharsets.UTF_8);
    }
}
