package dev.reelproof.api.result;

import dev.reelproof.api.Quantity;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.advice.Alternatives;
import dev.reelproof.measurement.Property;
import dev.reelproof.record.TestRecord;
import dev.reelproof.wording.AlternativesWords;
import dev.reelproof.wording.Wording;
import java.util.List;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** What else a reel could be, as the HTTP contract has it. */
record AlternativesAnswer(
        UUID record,
        String limitSet,
        String verdict,
        @Nullable Quantity cutTo,
        List<String> passes,
        List<String> blockedBy,
        List<String> notTested,
        List<Obstacle> requirements,
        List<Grade> limitSets,
        String advice,
        @Schema(description = "the same for a page, a line each") List<String> adviceLines) {

    /** A requirement of the reel's own set that does not pass. */
    record Obstacle(String requirement, String property, String outcome, boolean cuttingChangesIt, String why) {
        static Obstacle of(Alternatives.Unmet obstacle, AlternativesWords words) {
            return new Obstacle(
                    obstacle.finding().requirement(),
                    obstacle.finding().property().id(),
                    obstacle.finding().outcome().word(),
                    obstacle.cuttingChangesIt(),
                    words.why(obstacle));
        }
    }

    /** What the result comes to under another limit set; {@code onlyObstacle} is the one requirement in the way, if there is but one. */
    record Grade(
            String limitSet,
            int revision,
            String title,
            String verdict,
            List<String> inTheWay,
            @Nullable String onlyObstacle,
            String why) {
        static Grade of(Alternatives.Grade grade, AlternativesWords words) {
            return new Grade(
                    grade.limitSet().id(),
                    grade.limitSet().revision(),
                    grade.limitSet().title(),
                    grade.verdict().word(),
                    grade.inTheWay().stream().map(Finding::requirement).toList(),
                    grade.onlyObstacle().map(Finding::requirement).orElse(null),
                    words.why(grade));
        }
    }

    static AlternativesAnswer of(TestRecord record, Alternatives alternatives, Wording wording) {
        AlternativesWords words =
                wording.alternatives(alternatives, record.product().pairs());
        return new AlternativesAnswer(
                record.id(),
                record.judgement().limitSet(),
                record.judgement().verdict().word(),
                alternatives
                        .cutTo()
                        .map(length -> new Quantity(length.metres(), "m"))
                        .orElse(null),
                alternatives.passes(),
                alternatives.blockedBy().stream().map(Property::id).toList(),
                alternatives.notTested().stream().map(Property::id).toList(),
                alternatives.unmet().stream()
                        .map(one -> Obstacle.of(one, words))
                        .toList(),
                alternatives.grades().stream().map(one -> Grade.of(one, words)).toList(),
                words.advice(),
                words.lines());
    }
}
