package dev.reelproof.wording;

import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.judgement.Obstacle;
import dev.reelproof.judgement.Outcome;
import dev.reelproof.judgement.ReelConformity;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.measurement.Property;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Puts a verdict into words, with what to do next. */
final class VerdictSentences {
    /** Faults that may sit in one place of the cable, so that cutting it away may save the rest. */
    private static final Set<Property> MAY_BE_LOCAL = EnumSet.of(
            Property.DIELECTRIC_WITHSTAND,
            Property.SPARK_FAULTS,
            Property.INSULATION_RESISTANCE,
            Property.RETURN_LOSS,
            Property.STRUCTURAL_RETURN_LOSS,
            Property.INSULATION_FAULTS,
            Property.CONTINUITY_FAULTS);

    private final Wording wording;
    private final Catalogue words;

    VerdictSentences(Wording wording) {
        this.wording = wording;
        this.words = wording.words();
    }

    RecordWords of(Judgement judgement) {
        Look look = Look.of(judgement.verdict(), judgement.isConditional());
        List<Finding> failing = judgement.findings().stream()
                .filter(finding -> finding.outcome().rejects())
                .toList();
        List<Finding> open = judgement.findings().stream()
                .filter(finding -> finding.outcome() == Outcome.NOT_TESTED)
                .toList();
        return new RecordWords(
                words.text("verdict." + look.word()),
                look,
                words.text(
                        judgement.verdict() == Verdict.ACCEPTED && !open.isEmpty()
                                ? "verdict.accepted-as-recorded.sentence"
                                : "verdict." + look.word() + ".sentence"),
                nextSteps(failing, open, look),
                judgement.findings().size() - failing.size() - open.size(),
                failing.size(),
                open.size(),
                judgement
                        .conformity()
                        .map(conformity -> sentence(conformity, judgement))
                        .orElse(null));
    }

    /** How sure it is that all judged values meet their limits; null where the bounds say nothing. */
    private @Nullable String sentence(ReelConformity conformity, Judgement judgement) {
        String range = wording.range(conformity.atLeast(), conformity.atMost());
        return range == null
                ? null
                : words.text(
                        "verdict.conformity",
                        "range",
                        range,
                        "where",
                        wording.isNearlySure(conformity.atMost()) ? null : leastSure(judgement),
                        "counted",
                        String.valueOf(conformity.counted()),
                        "without",
                        conformity.withoutUncertainty() == 0 ? null : String.valueOf(conformity.withoutUncertainty()));
    }

    /** The requirement and place that is least sure of all. */
    private @Nullable String leastSure(Judgement judgement) {
        return judgement.findings().stream()
                .filter(finding -> finding.doubt() != null && finding.outcome() != Outcome.NOT_TESTED)
                .min(Comparator.comparingDouble(
                        finding -> Objects.requireNonNull(finding.doubt()).probability()))
                .map(finding -> wording.title(finding.property()) + ", "
                        + wording.place(finding.property(), Objects.requireNonNull(finding.doubt())))
                .orElse(null);
    }

    private List<String> nextSteps(List<Finding> failing, List<Finding> open, Look look) {
        List<String> steps = new ArrayList<>();
        if (!failing.isEmpty()) {
            steps.add(words.text("step.hand-over"));
            steps.add(words.text("step.test-again"));
            if (failing.stream().map(Finding::property).anyMatch(MAY_BE_LOCAL::contains)) {
                steps.add(words.text("step.cut-back"));
            }
            if (failing.stream().map(Finding::property).anyMatch(Precautions::isOfHighVoltage)) {
                steps.add(words.text("step.discharge", "caution", words.text("caution.high-voltage")));
            }
        }
        if (look == Look.CONDITIONAL) {
            steps.add(words.text("step.conditional"));
        }
        if (!open.isEmpty()) {
            steps.add(
                    words.text(failing.isEmpty() ? "step.complete" : "step.complete-too", "remedies", remedies(open)));
        }
        return steps;
    }

    /** What completes the measurement: each remedy once, the first to be taken first. */
    private String remedies(List<Finding> open) {
        Set<Obstacle.Kind> kinds = open.stream()
                .flatMap(finding -> finding.obstacles().named().stream())
                .map(Obstacle::kind)
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(Obstacle.Kind.class)));
        if (kinds.isEmpty()) {
            kinds.add(Obstacle.Kind.AS_RECORDED);
        }
        return kinds.stream()
                .map(kind -> ObstacleWords.remedy(kind, words))
                .distinct()
                .collect(Collectors.joining("; "));
    }
}
