package dev.reelproof.record;

import dev.reelproof.digest.Sha256;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.measurement.Equipment;
import dev.reelproof.measurement.Product;
import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.Temperature;
import dev.reelproof.store.result.Records;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A record: one test of one reel and what was found, as it was when it was taken. Its sweeps are kept apart, see
 * {@link Records#sweeps}.
 *
 * @param plant the plant
 * @param id the record's id; its time is {@code received}
 * @param received when the upload came in, to the millisecond, UTC
 * @param reel the reel's number
 * @param product the product as it was defined then
 * @param attempt which test of the reel it was in the order of arrival, from 1; {@link AttemptHistory} has the order of test
 * @param judgement what was found, without sweeps
 * @param length the length measured
 * @param temperature the cable's temperature
 * @param station the bay, where stated
 * @param technician who tested, where stated
 * @param started when the test began, where stated
 * @param finished when it ended
 * @param equipment the instruments
 * @param warnings sentences on what was odd but accepted
 * @param sourceSha256 digest of the upload
 * @param originals the parts of the upload
 * @param retestReason why the reel was tested again; null when it was not said
 */
public record TestRecord(
        String plant,
        UUID id,
        OffsetDateTime received,
        String reel,
        Product product,
        int attempt,
        Judgement judgement,
        Length length,
        Temperature temperature,
        @Nullable String station,
        @Nullable String technician,
        @Nullable OffsetDateTime started,
        OffsetDateTime finished,
        List<Equipment> equipment,
        List<String> warnings,
        String sourceSha256,
        List<KeptOriginal> originals,
        @Nullable String retestReason) {

    public TestRecord {
        requireText("plant", plant);
        requireText("reel", reel);
        if (id == null || received == null || product == null || judgement == null) {
            throw new IllegalArgumentException("a record needs its id, time of receipt, product and judgement");
        }
        if (!(attempt >= 1)) {
            throw new IllegalArgumentException("the attempt of record " + id + " must be from 1, not " + attempt);
        }
        if (length == null || temperature == null || finished == null) {
            throw new IllegalArgumentException(
                    "record " + id + " needs a length, a temperature and the time of its test");
        }
        if (started != null && started.isAfter(finished)) {
            throw new IllegalArgumentException(
                    "the test of record " + id + " started " + started + ", after it finished " + finished);
        }
        Sha256.requireHex("the upload of record " + id, sourceSha256);
        equipment = List.copyOf(equipment);
        warnings = List.copyOf(warnings);
        originals = List.copyOf(originals);
        for (int ordinal = 0; ordinal < originals.size(); ordinal++) {
            if (originals.get(ordinal).ordinal() != ordinal) {
                throw new IllegalArgumentException(
                        "the parts of the upload of record " + id + " are not counted from 0 without a gap");
            }
        }
    }

    private static void requireText(String what, String text) {
        if (text == null || text.isBlank()) {
            throw new IllegalArgumentException("a record needs a " + what);
        }
    }
}
