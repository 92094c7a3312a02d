package dev.reelproof.api.result;

import com.fasterxml.jackson.annotation.JsonInclude;
import dev.reelproof.api.Quantity;
import dev.reelproof.judgement.Figure;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Step;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.Subject;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** A finding, as the HTTP contract has it. */
record FindingAnswer(
        String requirement,
        String property,
        String sense,
        @Schema(enumeration = {"pass", "conditional-pass", "conditional-fail", "fail", "not-tested"}) String outcome,
        String reason,
        Double value,
        Double judged,
        Double limit,
        Double margin,
        String unit,
        Quantity frequency,
        Integer pair,
        Integer partner,
        String conductor,
        String end,
        Integer sample,
        @Schema(
                        nullable = true,
                        description =
                                "the value as sent; null without a figure, and for a statistic over values sent in different units")
                Double measured,
        String measuredUnit,
        int points,
        boolean derived,
        List<Integer> varyingPairs,
        String decisionRule,
        @Schema(nullable = true, description = "expanded uncertainty of the value; null when none is known")
                Expanded uncertainty,
        @Schema(
                        nullable = true,
                        description = "that the true value meets the limit, 0 to 1; null when no uncertainty is known")
                Double probabilityOfConformity,
        @JsonInclude(JsonInclude.Include.NON_NULL) List<String> requirements,
        @JsonInclude(JsonInclude.Include.NON_NULL) List<StepAnswer> explanation) {

    /** An expanded uncertainty: {@code coverageFactor} times the standard uncertainty. */
    record Expanded(double value, String unit, double coverageFactor) {
        static Expanded of(Figure figure) {
            return figure == null || figure.uncertainty() == null
                    ? null
                    : new Expanded(
                            figure.uncertainty().expanded(),
                            figure.unit(),
                            figure.uncertainty().coverageFactor());
        }
    }

    /** A step of the chain behind a figure. */
    record StepAnswer(String title, String detail, double value, String unit, String source) {
        static StepAnswer of(Step step) {
            return new StepAnswer(step.title(), step.detail(), step.value(), step.unit(), step.source());
        }
    }

    static FindingAnswer of(Finding finding, LimitSet limitSet, Product product) {
        return of(finding, limitSet, product, null, null);
    }

    /**
     * A finding with the chain behind its figure.
     *
     * @param requirements the ids of all requirements of the property
     */
    static FindingAnswer explained(Finding finding, LimitSet limitSet, Product product, List<String> requirements) {
        List<StepAnswer> steps = finding.figure() == null
                ? List.of()
                : finding.figure().steps().stream().map(StepAnswer::of).toList();
        return of(finding, limitSet, product, requirements, steps);
    }

    private static FindingAnswer of(
            Finding finding, LimitSet limitSet, Product product, List<String> requirements, List<StepAnswer> steps) {
        Figure figure = finding.figure();
        Subject subject = figure == null ? Subject.ofReel() : figure.subject();
        return new FindingAnswer(
                finding.requirement(),
                finding.property().id(),
                limitSet.requirement(finding.requirement(), product.pairs())
                        .map(requirement -> requirement.limit().sense())
                        .orElse(null),
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
                requirements,
                steps);
    }
}
