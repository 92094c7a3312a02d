package dev.reelproof.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CertificateSamples;
import dev.reelproof.certificate.Circumstances;
import dev.reelproof.judgement.Figure;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Obstacle;
import dev.reelproof.judgement.Obstacles;
import dev.reelproof.judgement.Outcome;
import dev.reelproof.limit.DecisionRule;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.RequirementBuilder;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Another language is two files; the test has one with few words, under a tag that no plant prints in. */
class AnotherLanguageTest {
    private static final Locale FEW_WORDS = Locale.forLanguageTag("gsw");

    private final Wording german = Wording.of(Catalogue.of(FEW_WORDS));

    private final Requirement returnLoss = RequirementBuilder.of(
                    Property.RETURN_LOSS, Findings.flatAtLeast(16.79), new Domain.Range(1, 500), "dB")
            .build();

    private Figure figure(double value) {
        return Findings.figure(returnLoss, Subject.ofPair(3).at(End.NEAR), 378.0, value, 16.79, value - 16.79, null);
    }

    @Test
    void aFailureIsSaidInIt() {
        FindingWords words = german.finding(Findings.finding(returnLoss, Outcome.FAIL, figure(12.34)), returnLoss);
        assertEquals("Rückflussdämpfung", words.title());
        assertEquals("wie wenig zum Sender zurückläuft", words.plain());
        assertEquals("nicht bestanden", words.outcome());
        assertEquals(
                "12.34 dB an Paar 3, nahes Ende, 378 MHz; der Grenzwert ist mindestens 16.79 dB, verfehlt um 4.45 dB",
                words.sentence());
        assertEquals("Rückflussdämpfung, Paar 3, nahes Ende: 4.45 dB zu wenig bei 378 MHz", words.shortfall());
        assertEquals("über 99.9 %", german.probability(1));
    }

    @Test
    void anObstacleIsSaidInItAndTheRecordStaysEnglish() {
        Obstacles obstacles = new Obstacles(
                List.of(new Obstacle(
                        Obstacle.Kind.PAIR_MISSING, Map.of("property", "return-loss", "missing", "pair 2"))),
                1);
        Finding finding = new Finding(
                "return-loss",
                Property.RETURN_LOSS,
                Outcome.NOT_TESTED,
                "pair missing: return-loss of pair 2 was not measured; and 1 more",
                obstacles,
                null,
                0,
                List.of(),
                DecisionRule.SIMPLE_ACCEPTANCE,
                null);
        FindingWords words = german.finding(finding, returnLoss);
        assertEquals(
                "nicht geprüft: Paar fehlt: return-loss wurde nicht gemessen an pair 2 (und 1 weitere)",
                words.sentence());
        assertEquals("jedes Paar messen", words.obstacles().get(0).remedy());
        assertEquals(
                "pair missing: return-loss of pair 2 was not measured",
                finding.obstacles().named().get(0).sentence());
    }

    @Test
    void aCertificateIsPrintedInIt() {
        LimitSet set = CertificateSamples.limitSetOf(List.of(returnLoss));
        Product product = CertificateSamples.product(4);
        CertificateContent content = CertificateContent.of(
                CertificateSamples.issuing(),
                CertificateSamples.declaredIn(FEW_WORDS),
                Circumstances.NONE,
                CertificateSamples.item(),
                CertificateSamples.conditions(),
                product,
                CertificateSamples.judgementOf(set, List.of(Findings.finding(returnLoss, Outcome.PASS, figure(18)))),
                set);
        assertEquals("Rückflussdämpfung", content.rows().get(0).title());
        assertEquals("Paar 3, nahes Ende, 378 MHz", content.rows().get(0).where());
    }

    @Test
    void whatItHasNoWordsForIsSaidInEnglish() {
        assertEquals("Insertion loss", german.title(Property.INSERTION_LOSS));
    }
}
