package dev.reelproof.api.result;

import com.fasterxml.jackson.annotation.JsonProperty;
import dev.reelproof.api.Quantity;
import dev.reelproof.app.result.JudgedRecord;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.measurement.Equipment;
import dev.reelproof.measurement.Property;
import dev.reelproof.record.AttemptHistory;
import dev.reelproof.record.RetestAcceptance;
import dev.reelproof.record.TestRecord;
import dev.reelproof.wording.AttemptWords;
import dev.reelproof.wording.Figures;
import dev.reelproof.wording.RecordWords;
import dev.reelproof.wording.Wording;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** A record, as the HTTP contract has it. */
public record RecordAnswer(
        UUID id,
        String plant,
        String reel,
        String product,
        @Schema(description = "which test of the reel it was in the order of arrival, from 1; it never changes")
                int attempt,
        @Schema(
                        description =
                                "which test of the reel it is in the order of test, from 1; a test that comes in late moves it")
                int order,
        @Schema(description = "how many tests of the reel there are") int attempts,
        @Schema(description = "whether it is the newest in the order of test, whose verdict is the reel's")
                boolean newest,
        @Schema(
                        enumeration = {"accepted", "rejected", "incomplete"},
                        description = "what the tests before it came to, in the order of test")
                List<String> earlierVerdicts,
        @Schema(description = "what it came to at which attempt, and what came before, in words") String attemptSummary,
        @Schema(
                        nullable = true,
                        description = "that it is an older test, and what the newest came to; null for the newest")
                @Nullable
                String olderSentence,
        @Schema(nullable = true, description = "why the reel was tested again; null where it was not said") @Nullable
                String retestReason,
        @Schema(description = "whether it passed after a failure and counts only once an engineer has accepted it")
                boolean awaitsEngineer,
        @Schema(nullable = true, description = "who accepted the retest; null where nobody did") @Nullable
                Acceptance retestAcceptance,
        LimitSetName limitSet,
        @Schema(nullable = true, description = "where the uncertainties were taken from; null when there was none")
                @Nullable
                UncertaintyModelName uncertaintyModel,
        String engine,
        String sourceSha256,
        OffsetDateTime received,
        Quantity length,
        Quantity temperature,
        @Nullable String station,
        @Nullable String technician,
        @Nullable OffsetDateTime started,
        OffsetDateTime finished,
        List<Instrument> equipment,
        @Schema(enumeration = {"accepted", "rejected", "incomplete"}) String verdict,
        @Schema(description = "accepted, but a passing value lies within a guard band") boolean conditional,
        List<String> warnings,
        List<FindingAnswer> findings,
        List<Original> original,
        @Schema(description = "the verdict in words") String verdictText,
        @Schema(enumeration = {"accepted", "conditional", "rejected", "incomplete"}) String look,
        @Schema(description = "what the verdict means for the reel") String verdictSentence,
        @Schema(description = "what to do, in order") List<String> nextSteps,
        String printedTemperature,
        String printedLength,
        Counts counts,
        @Schema(
                        nullable = true,
                        description =
                                "how sure it is that all judged values meet their limits; null when no uncertainty is known")
                @Nullable
                Conformity conformity) {

    /**
     * Two bounds of the probability that all judged values meet their limits, whatever their errors have in common (Boole's inequality).
     */
    record Conformity(double atLeast, double atMost, int counted, int withoutUncertainty, @Nullable String sentence) {
        static @Nullable Conformity of(Judgement judgement, RecordWords words) {
            return judgement
                    .conformity()
                    .map(bounds -> new Conformity(
                            bounds.atLeast(),
                            bounds.atMost(),
                            bounds.counted(),
                            bounds.withoutUncertainty(),
                            words.conformity()))
                    .orElse(null);
        }
    }

    /** That an engineer accepted a pass after a failure. */
    @Schema(name = "RetestAcceptance")
    record Acceptance(String by, OffsetDateTime at, String reason, String sentence) {
        static @Nullable Acceptance of(@Nullable RetestAcceptance acceptance, AttemptWords words) {
            return acceptance == null
                    ? null
                    : new Acceptance(
                            acceptance.acceptedBy(),
                            acceptance.at(),
                            acceptance.reason(),
                            Objects.requireNonNull(words.accepted(), "what was accepted has its sentence"));
        }
    }

    /** How many requirements pass, fail (either of them conditionally or not) and were not tested. */
    record Counts(int passing, int failing, int notTested) {}

    /** Which revision of a limit set. */
    record LimitSetName(String id, int revision, String sha256) {}

    /** Which revision of an uncertainty model. */
    record UncertaintyModelName(String id, int revision, String sha256) {
        public static @Nullable UncertaintyModelName of(Judgement.@Nullable Model model) {
            return model == null ? null : new UncertaintyModelName(model.id(), model.revision(), model.sha256());
        }
    }

    /** An instrument that took part; {@code class} is that of the uncertainty model, where it is stated. */
    record Instrument(
            String id,
            @Nullable LocalDate calibrationDue,
            List<String> properties,
            @JsonProperty("class") @Nullable String equipmentClass) {
        public static Instrument of(Equipment equipment) {
            return new Instrument(
                    equipment.id(),
                    equipment.calibrationDue(),
                    equipment.properties().stream().sorted().map(Property::id).toList(),
                    equipment.equipmentClass());
        }
    }

    /** A part of the upload; its place in the list is the number under which it is served. */
    record Original(String name, String mediaType, String sha256, int bytes) {}

    public static RecordAnswer of(JudgedRecord judged, Wording wording) {
        TestRecord record = judged.record();
        LimitSet limitSet = judged.limitSet();
        AttemptHistory history = judged.history();
        AttemptWords among = wording.attempt(history, record.id(), judged.awaitsEngineer());
        RecordWords words = wording.record(record.judgement());
        return new RecordAnswer(
                record.id(),
                record.plant(),
                record.reel(),
                record.product().id(),
                record.attempt(),
                history.orderOf(record.id()),
                history.count(),
                history.isNewest(record.id()),
                history.earlierVerdicts(record.id()).stream().map(Verdict::word).toList(),
                among.summary(),
                among.older(),
                record.retestReason(),
                judged.awaitsEngineer(),
                Acceptance.of(history.of(record.id()).acceptance(), among),
                new LimitSetName(
                        record.judgement().limitSet(),
                        record.judgement().revision(),
                        record.judgement().limitSetSha256()),
                UncertaintyModelName.of(record.judgement().uncertaintyModel()),
                record.judgement().engine(),
                record.sourceSha256(),
                record.received(),
                new Quantity(record.length().metres(), "m"),
                new Quantity(record.temperature().celsius(), "°C"),
                record.station(),
                record.technician(),
                record.started(),
                record.finished(),
                record.equipment().stream().map(Instrument::of).toList(),
                record.judgement().verdict().word(),
                record.judgement().isConditional(),
                record.warnings(),
                record.judgement().findings().stream()
                        .map(finding -> FindingAnswer.of(finding, limitSet, record.product(), wording))
                        .toList(),
                record.originals().stream()
                        .map(part -> new Original(part.name(), part.mediaType(), part.sha256(), part.size()))
                        .toList(),
                words.verdict(),
                words.look().word(),
                whatItMeans(among, words),
                words.nextSteps(),
                Figures.temperature(record.temperature().celsius(), "°C"),
                Figures.length(record.length().metres(), "m"),
                new Counts(words.passing(), words.failing(), words.notTested()),
                Conformity.of(record.judgement(), words));
    }

    /** Of an older test, or one that waits for an engineer, nothing may be read that lets the reel go. */
    private static String whatItMeans(AttemptWords among, RecordWords words) {
        if (among.older() != null) {
            return among.older();
        }
        return among.awaiting() != null ? among.awaiting() : words.sentence();
    }
}
