package dev.reelproof.certificate;

import dev.reelproof.judgement.Figure;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Requirement;
import dev.reelproof.measurement.Product;
import dev.reelproof.wording.PrintedFigure;
import dev.reelproof.wording.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** The rows of a certificate's table: one a finding. */
final class Rows {
    private final Wording wording;

    Rows(Wording wording) {
        this.wording = wording;
    }

    List<CertificateContent.Row> of(Judgement judgement, LimitSet limitSet, Product product) {
        return judgement.findings().stream()
                .map(finding -> row(finding, requirement(finding, limitSet, product)))
                .toList();
    }

    /** The requirement that a finding speaks of; of several with its id, the one that holds for the product. */
    static Requirement requirement(Finding finding, LimitSet limitSet, Product product) {
        return limitSet.requirement(finding.requirement(), product.pairs())
                .filter(requirement -> requirement.property() == finding.property())
                .orElseThrow(() -> new IllegalArgumentException("limit set " + limitSet.id() + " revision "
                        + limitSet.revision() + " has no requirement '" + finding.requirement() + "' for "
                        + finding.property() + " of product " + product.id()));
    }

    private CertificateContent.Row row(Finding finding, Requirement requirement) {
        Figure figure = finding.figure();
        if (figure == null) {
            throw new IllegalArgumentException("requirement '" + finding.requirement()
                    + "' is said to pass but has no figure; a certificate states the worst value of each requirement");
        }
        PrintedFigure printed = wording.printed(requirement, figure);
        return new CertificateContent.Row(
                requirement.id(),
                requirement.property().id(),
                wording.title(requirement),
                wording.plain(requirement.property()),
                wording.limit(requirement),
                wording.limitParts(requirement).stream()
                        .map(part -> new CertificateContent.Part(part.figures(), part.range()))
                        .toList(),
                printed.value(),
                printed.limit(),
                printed.margin(),
                printed.unit(),
                wording.place(finding.property(), figure),
                finding.points(),
                finding.outcome().word(),
                notes(finding, requirement, printed));
    }

    private List<String> notes(Finding finding, Requirement requirement, PrintedFigure printed) {
        List<String> notes = new ArrayList<>();
        Figure figure = finding.worst();
        if (figure.measured() != null && figure.measuredUnit() != null && isReferred(figure)) {
            notes.add(wording.asMeasured(figure.measured(), figure.measuredUnit()));
        }
        if (printed.unrounded() != null) {
            notes.add(wording.beforeRounding(printed.unrounded()));
        }
        if (printed.expanded() != null) {
            notes.add(wording.uncertainty(printed));
        }
        wording.leastSure(finding).ifPresent(notes::add);
        if (figure.derived()) {
            notes.add(wording.computed());
        }
        if (!requirement.laws().isEmpty()) {
            notes.add(wording.corrected(
                    requirement.laws().stream().map(wording::law).collect(Collectors.joining(", "))));
        }
        if (!finding.varyingPairs().isEmpty() && finding.reason() == null) {
            notes.add(wording.leftOut(finding.varyingPairs()));
        }
        if (finding.reason() != null) {
            notes.add(finding.reason());
        }
        requirement.condition().flatMap(TestCondition::in).ifPresent(notes::add);
        return notes;
    }

    /** Whether the value is another than what was measured, or in another unit. */
    private static boolean isReferred(Figure figure) {
        return figure.measured() == null
                || figure.measured() != figure.value()
                || !figure.unit().equals(figure.measuredUnit());
    }
}
