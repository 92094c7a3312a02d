package dev.reelproof.certificate;

import dev.reelproof.certificate.CertificateContent.Conditions;
import dev.reelproof.certificate.CertificateContent.Instrument;
import dev.reelproof.certificate.CertificateContent.Quantity;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.limit.Bound;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.RoundingRule;
import dev.reelproof.measurement.LengthMarks;
import dev.reelproof.measurement.Product;
import dev.reelproof.quantity.Kind;
import dev.reelproof.wording.Catalogue;
import dev.reelproof.wording.StatementSentences;
import dev.reelproof.wording.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Puts together what a certificate says of one judged reel. */
final class ContentAssembly {
    private final Declaration declaration;
    private final Circumstances circumstances;
    private final Item item;
    private final Product product;
    private final Judgement judgement;
    private final LimitSet limitSet;
    private final Wording wording;

    /** @throws IllegalArgumentException when the judgement may not have one, or the limit set is not the one that it was judged by */
    ContentAssembly(
            Declaration declaration,
            Circumstances circumstances,
            Item item,
            Product product,
            Judgement judgement,
            LimitSet limitSet) {
        MayHaveCertificate.reasonAgainst(judgement, circumstances.concessions()).ifPresent(reason -> {
            throw new IllegalArgumentException("reel " + item.reel() + ": " + reason);
        });
        if (!(limitSet.id().equals(judgement.limitSet())
                && limitSet.revision() == judgement.revision()
                && limitSet.sha256().equals(judgement.limitSetSha256()))) {
            throw new IllegalArgumentException("reel " + item.reel() + " was judged by " + judgement.limitSet()
                    + " revision " + judgement.revision() + " (" + judgement.limitSetSha256() + "), not by "
                    + limitSet.id() + " revision " + limitSet.revision() + " (" + limitSet.sha256() + ")");
        }
        this.declaration = declaration;
        this.circumstances = circumstances;
        this.item = item;
        this.product = product;
        this.judgement = judgement;
        this.limitSet = limitSet;
        this.wording = Wording.of(Catalogue.of(declaration.language()));
    }

    CertificateContent of(Issuing issuing, TestConditions test) {
        List<CertificateContent.Conceded> concessions =
                new Concessions(wording).of(circumstances.concessions(), limitSet, product);
        return new CertificateContent(
                issuing.number().toString(),
                issuing.issue(),
                issuing.issued().toString(),
                issuing.plant(),
                new CertificateContent.Cable(product.id(), product.description(), product.gauge(), product.pairs()),
                item.reel(),
                new Quantity(item.lengthSent(), item.lengthUnit()),
                item.length().metres(),
                marks(item.lengthMarks()),
                item.customer(),
                item.order(),
                item.consignee(),
                new CertificateContent.Limits(
                        limitSet.id(),
                        limitSet.title(),
                        limitSet.revision(),
                        limitSet.effective().toString(),
                        limitSet.sha256(),
                        limitSet.referenceTemperature().celsius(),
                        limitSet.referenceLength().metres(),
                        wording.rounding(limitSet.rounding())),
                test.record(),
                test.sourceSha256(),
                judgement.engine(),
                conditions(test),
                judgement.verdict().word(),
                decisionRules(),
                new Rows(wording).of(judgement, limitSet, product),
                limitSet.leftOut().stream().map(LimitSet.LeftOut::what).toList(),
                new Plots(wording).of(judgement, limitSet, product),
                wording.uncertainty(judgement).orElse(null),
                paper(),
                statement(concessions),
                new Distributions(wording).of(judgement, limitSet, product),
                concessions);
    }

    private static CertificateContent.@Nullable Marks marks(@Nullable LengthMarks marks) {
        return marks == null
                ? null
                : new CertificateContent.Marks(
                        marks.first(), marks.last(), marks.unit(), marks.firstMetres(), marks.lastMetres());
    }

    private CertificateContent.Paper paper() {
        return new CertificateContent.Paper(
                wording.declared(declaration.type().word()),
                declaration.type().standard().orElse(null),
                declaration.language().toLanguageTag(),
                declaration.sheet(),
                declaration.units(),
                declaration.authorised());
    }

    private List<String> statement(List<CertificateContent.Conceded> concessions) {
        StatementSentences sentences = wording.statement();
        List<String> statement = new ArrayList<>(sentences.conformity(item.reel(), judgement, limitSet, product));
        if (item.order() != null
                && judgement.verdict() == Verdict.ACCEPTED
                && declaration.type().saysThatItMeetsTheOrder()) {
            statement.add(sentences.order(item.order()));
        }
        if (circumstances.tests() != null) {
            statement.add(sentences.tests(circumstances.tests()));
        }
        concessions.forEach(conceded -> statement.add(conceded.statement()));
        Circumstances.Replaced replaced = circumstances.replaced();
        if (replaced != null) {
            statement.add(sentences.replaces(replaced.issue(), replaced.issued().toString(), replaced.reason()));
        }
        return statement;
    }

    /** Each decision rule once; of a rule that decided on rounded values too, what that means. */
    private String decisionRules() {
        return judgement.findings().stream()
                .map(Finding::decisionRule)
                .distinct()
                .map(rule -> wording.ruleInFull(
                        rule,
                        judgement.findings().stream()
                                .anyMatch(finding -> finding.decisionRule().equals(rule) && isRounded(finding))))
                .collect(Collectors.joining(" "));
    }

    /** Whether the values of a finding are rounded before they are compared: see what the judgement leaves as it is. */
    private boolean isRounded(Finding finding) {
        Requirement requirement = Rows.requirement(finding, limitSet, product);
        return limitSet.rounding() == RoundingRule.TO_THE_PLACES_OF_THE_LIMIT
                && !finding.decisionRule().needsUncertainty()
                && requirement.unit().kind() != Kind.COUNT
                && bounds(requirement.limit())
                        .anyMatch(bound -> bound.decimals().isPresent());
    }

    private static Stream<Bound> bounds(Limit limit) {
        return Stream.of(limit.lower(), limit.upper()).flatMap(Optional::stream);
    }

    private static Conditions conditions(TestConditions test) {
        return new Conditions(
                new Quantity(test.temperatureSent(), test.temperatureUnit()),
                test.temperature().celsius(),
                test.started() == null ? null : test.started().toString(),
                test.finished().toString(),
                test.station(),
                test.technician(),
                test.equipment().stream()
                        .map(instrument -> new Instrument(
                                instrument.id(),
                                instrument.calibrationDue() == null
                                        ? null
                                        : instrument.calibrationDue().toString()))
                        .toList());
    }
}
