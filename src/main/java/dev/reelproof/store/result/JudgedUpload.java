package dev.reelproof.store.result;

import dev.reelproof.intake.result.Upload;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.UncertaintyModel;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.ReelResult;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * An upload that was read and judged, ready to be kept.
 *
 * @param plant the plant
 * @param reel the reel's number; registered
 * @param received when it came in
 * @param upload what was sent
 * @param result what was measured
 * @param product the product as it is defined now
 * @param limitSet what it was judged by
 * @param judgement what was found
 * @param uncertaintyModel where its uncertainties were taken from; empty when there was none
 * @param warnings sentences on what is odd but accepted
 * @param retestReason why the reel is tested again; null when it was not said
 */
public record JudgedUpload(
        String plant,
        String reel,
        OffsetDateTime received,
        Upload upload,
        ReelResult result,
        Product product,
        LimitSet limitSet,
        Judgement judgement,
        Optional<UncertaintyModel> uncertaintyModel,
        List<String> warnings,
        @Nullable String retestReason) {

    public JudgedUpload {
        if (plant == null || plant.isBlank() || reel == null || reel.isBlank()) {
            throw new IllegalArgumentException(
                    "an upload is of a reel of a plant, not of '" + reel + "' of '" + plant + "'");
        }
        if (received == null) {
            throw new IllegalArgumentException("the upload of reel " + reel + " needs the time at which it came in");
        }
        if (!judgement.limitSet().equals(limitSet.id())
                || judgement.revision() != limitSet.revision()
                || !judgement.limitSetSha256().equals(limitSet.sha256())) {
            throw new IllegalArgumentException("the upload of reel " + reel + " was judged by " + judgement.limitSet()
                    + " revision " + judgement.revision() + ", not by " + limitSet.id() + " revision "
                    + limitSet.revision());
        }
        warnings = List.copyOf(warnings);
    }

    /** The upload with one more warning. */
    public JudgedUpload withWarning(String warning) {
        List<String> more = new ArrayList<>(warnings);
        more.add(warning);
        return new JudgedUpload(
                plant,
                reel,
                received,
                upload,
                result,
                product,
                limitSet,
                judgement,
                uncertaintyModel,
                more,
                retestReason);
    }
}
