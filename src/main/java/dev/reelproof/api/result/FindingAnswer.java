package dev.reelproof.api.result;

import com.fasterxml.jackson.annotation.JsonInclude;
import dev.reelproof.api.Quantity;
import dev.reelproof.judgement.Doubt;
import dev.reelproof.judgement.Figure;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Step;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Requirement;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.Subject;
import dev.reelproof.wording.Figures;
import dev.reelproof.wording.FindingWords;
import dev.reelproof.wording.ObstacleWords;
import dev.reelproof.wording.PrintedFigure;
import dev.reelproof.wording.Wording;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** A finding, as the HTTP contract has it. */
record FindingAnswer(
        String requirement,
        String property,
        String sense,
        @Schema(enumeration = {"pass", "conditional-pass", "conditional-fail", "fail", "not-tested"}) String outcome,
        @Nullable String reason,
        @Nullable Double value,
        @Nullable Double judged,
        @Nullable Double limit,
        @Nullable Double margin,
        @Nullable String unit,
        @Nullable Quantity frequency,
        @Nullable Integer pair,
        @Nullable Integer partner,
        @Nullable String conductor,
        @Nullable String end,
        @Nullable Integer sample,
        @Schema(
                        description =
                                "the unit of the core that a statistic was taken of, or the two that it was taken between; else empty")
                List<Integer> coreUnits,
        @Schema(
                        nullable = true,
                        description =
                                "the value as sent; null without a figure, and for a statistic over values sent in different units")
                @Nullable
                Double measured,
        @Nullable String measuredUnit,
        int points,
        boolean derived,
        List<Integer> varyingPairs,
        String decisionRule,
        @Schema(nullable = true, description = "expanded uncertainty of the value; null when none is known") @Nullable
                Expanded uncertainty,
        @Schema(
                        nullable = true,
                        description = "that the true value meets the limit, 0 to 1; null when no uncertainty is known")
                @Nullable
                Double probabilityOfConformity,
        @Schema(description = "the trade's name with statistic and scope") String title,
        @Schema(description = "the property in plain words") String plain,
        @Schema(description = "the outcome in words") String outcomeText,
        @Schema(description = "the outcome as a sign") String outcomeSign,
        @Schema(description = "where the worst figure was found; 'reel' where there is none") String place,
        @Schema(nullable = true, description = "the figure as it is printed on page and certificate") @Nullable
                Printed printed,
        @Schema(description = "all of it in one sentence") String sentence,
        @Schema(nullable = true, description = "by how much it misses its limit, and where; null unless it fails")
                @Nullable
                String shortfall,
        @Schema(description = "what stands in the way of judging it, the first few") List<ObstacleAnswer> obstacles,
        @Schema(description = "how many more obstacles there are") int moreObstacles,
        @Schema(nullable = true, description = "what there is to say of a finding that was tested") @Nullable
                String remark,
        @Schema(description = "the shortest that explains the finding") String note,
        @Schema(nullable = true, description = "what keeps who tests it safe") @Nullable String caution,
        @Schema(
                        nullable = true,
                        description =
                                "where it is least sure that the requirement is met; null when no uncertainty is known")
                @Nullable
                LeastProbable leastProbable,
        @Schema(description = "whether a reel is rejected for it") boolean failing,
        @Schema(description = "whether the property is a curve over frequency") boolean swept,
        @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable List<String> requirements,
        @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable List<StepAnswer> explanation) {

    /** An expanded uncertainty: {@code coverageFactor} times the standard uncertainty. */
    record Expanded(double value, String unit, double coverageFactor) {
        static @Nullable Expanded of(@Nullable Figure figure) {
            return figure == null || figure.uncertainty() == null
                    ? null
                    : new Expanded(
                            figure.uncertainty().expanded(),
                            figure.unit(),
                            figure.uncertainty().coverageFactor());
        }
    }

    /**
     * The value that meets its limit least probably, and the least probability that all of the requirement do, whatever the errors have in
     * common.
     */
    record LeastProbable(
            @Nullable Quantity frequency,
            @Nullable Integer pair,
            @Nullable Integer partner,
            @Nullable String conductor,
            @Nullable String end,
            @Nullable Integer sample,
            double value,
            double margin,
            double probability,
            double allAtLeast,
            @Nullable String sentence) {
        static @Nullable LeastProbable of(@Nullable Doubt doubt, FindingWords words) {
            if (doubt == null) {
                return null;
            }
            Subject subject = doubt.subject();
            return new LeastProbable(
                    doubt.megahertz() == null ? null : new Quantity(doubt.megahertz(), "MHz"),
                    subject.pair(),
                    subject.partner(),
                    subject.conductor() == null ? null : subject.conductor().letter(),
                    subject.end() == null ? null : subject.end().word(),
                    subject.sample(),
                    doubt.value(),
                    doubt.margin(),
                    doubt.probability(),
                    doubt.atLeast(),
                    words.leastSure());
        }
    }

    /** A figure as it is printed; with uncertainty and probability where they are known. */
    record Printed(
            String value,
            String limit,
            String sense,
            String senseSign,
            String margin,
            String unit,
            @Schema(nullable = true) @Nullable String uncertainty,
            @Schema(nullable = true) @Nullable String probability) {
        static @Nullable Printed of(@Nullable PrintedFigure figure) {
            return figure == null
                    ? null
                    : new Printed(
                            figure.value(),
                            figure.limit(),
                            figure.sense(),
                            figure.senseSign(),
                            figure.margin(),
                            figure.unit(),
                            figure.uncertainty(),
                            figure.probability());
        }
    }

    /** Something that stands in the way of judging a requirement. */
    record ObstacleAnswer(String kind, Map<String, String> parts, String sentence, String remedy) {
        static ObstacleAnswer of(ObstacleWords obstacle) {
            return new ObstacleAnswer(obstacle.kind(), obstacle.parts(), obstacle.sentence(), obstacle.remedy());
        }
    }

    /** A step of the chain behind a figure. */
    record StepAnswer(String title, String detail, double value, String unit, @Nullable String source, String printed) {
        static StepAnswer of(Step step) {
            return new StepAnswer(
                    step.title(),
                    step.detail(),
                    step.value(),
                    step.unit(),
                    step.source(),
                    Figures.step(step.value(), step.unit()));
        }
    }

    static FindingAnswer of(Finding finding, LimitSet limitSet, Product product, Wording wording) {
        return of(finding, limitSet, product, wording, null, null);
    }

    /**
     * A finding with the chain behind its figure.
     *
     * @param requirements the ids of all requirements of the property
     */
    static FindingAnswer explained(
            Finding finding, LimitSet limitSet, Product product, Wording wording, List<String> requirements) {
        List<StepAnswer> steps = finding.figure() == null
                ? List.of()
                : finding.figure().steps().stream().map(StepAnswer::of).toList();
        return of(finding, limitSet, product, wording, requirements, steps);
    }

    private static List<Integer> coreUnits(@Nullable Figure figure) {
        return figure == null || figure.units() == null
                ? List.of()
                : Stream.of(figure.units().unit(), figure.units().other())
                        .flatMap(Stream::ofNullable)
                        .toList();
    }

    private static FindingAnswer of(
            Finding finding,
            LimitSet limitSet,
            Product product,
            Wording wording,
            @Nullable List<String> requirements,
            @Nullable List<StepAnswer> steps) {
        Requirement requirement = limitSet.requirement(finding.requirement(), product.pairs())
                .orElseThrow(() -> new IllegalStateException("limit set " + limitSet.id() + " revision "
                        + limitSet.revision() + " has no requirement '" + finding.requirement() + "' for product "
                        + product.id()));
        FindingWords words = wording.finding(finding, requirement);
        Figure figure = finding.figure();
        Subject subject = figure == null ? Subject.ofReel() : figure.subject();
        return new FindingAnswer(
                finding.requirement(),
                finding.property().id(),
                requirement.limit().sense(),
                finding.outcome().word(),
                finding.reason(),
                figure == null ? null : figure.value(),
                figure == null ? null : figure.judged(),
                figure == null ? null : figure.limit(),
                figure == null ? null : figure.margin(),
                figure == null ? null : figure.unit(),
                figure == null || figure.megahertz() == null ? null : new Quantity(figure.megahertz(), "MHz"),
                subject.pair(),
                subject.partner(),
                subject.conductor() == null ? null : subject.conductor().letter(),
                subject.end() == null ? null : subject.end().word(),
                subject.sample(),
                coreUnits(figure),
                figure == null ? null : figure.measured(),
                figure == null ? null : figure.measuredUnit(),
                finding.points(),
                figure != null && figure.derived(),
                finding.varyingPairs(),
                finding.decisionRule().words(),
                Expanded.of(figure),
                figure == null || figure.uncertainty() == null
                        ? null
                        : figure.uncertainty().probabilityOfConformity(),
                words.title(),
                words.plain(),
                words.outcome(),
                words.sign(),
                words.place(),
                Printed.of(words.printed()),
                words.sentence(),
                words.shortfall(),
                words.obstacles().stream().map(ObstacleAnswer::of).toList(),
                words.moreObstacles(),
                words.remark(),
                words.note(),
                words.caution(),
                LeastProbable.of(finding.doubt(), words),
                finding.outcome().rejects(),
                finding.property().isSweep(),
                requirements,
                steps);
    }
}
