package dev.reelproof.certificate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.judgement.Figure;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Outcome;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.limit.DecisionRule;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.record.concession.ConcessionSamples;
import dev.reelproof.record.concession.ConcessionStanding;
import dev.reelproof.record.concession.Terms;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class MayHaveCertificateTest {
    private static final DecisionRule FOUR_OUTCOMES = new DecisionRule(DecisionRule.Form.GUARD_BAND_FOUR, 1);
    private static final Finding PASSES = finding(
            Property.MUTUAL_CAPACITANCE, Outcome.PASS, null, CertificateSamples.figure(Property.MUTUAL_CAPACITANCE));
    private static final Finding FAILS = finding(
            Property.NEXT,
            Outcome.FAIL,
            null,
            new Figure(
                    Subject.ofCombination(1, 2).at(End.NEAR),
                    null,
                    100.0,
                    43.9,
                    "dB",
                    43.9,
                    43.9,
                    44.3,
                    -0.4,
                    "dB",
                    false,
                    null,
                    List.of()));
    private static final Finding NOT_TESTED =
            finding(Property.RETURN_LOSS, Outcome.NOT_TESTED, "no data for pair 3, near end", null);

    private static Finding finding(Property property, Outcome outcome, String reason, Figure figure) {
        return new Finding(property.id(), property, outcome, reason, figure, 1, List.of(), FOUR_OUTCOMES);
    }

    @Test
    void anAcceptedReelMay() {
        assertEquals(
                Optional.empty(),
                MayHaveCertificate.reasonAgainst(CertificateSamples.judgementOf(Verdict.ACCEPTED, PASSES)));
    }

    @Test
    void aRejectedReelMayNotAndEachRequirementInTheWayIsNamed() {
        assertEquals(
                "only an accepted reel has a certificate;"
                        + " 1 requirement fails: next (pairs 1 and 2, near end, 100 MHz: margin −0.4 dB);"
                        + " 1 requirement was not tested: return-loss (no data for pair 3, near end)",
                MayHaveCertificate.reasonAgainst(
                                CertificateSamples.judgementOf(Verdict.REJECTED, PASSES, FAILS, NOT_TESTED))
                        .orElseThrow());
    }

    @Test
    void aConditionalPassMayAndAConditionalFailMayNot() {
        Finding passes = finding(Property.MUTUAL_CAPACITANCE, Outcome.CONDITIONAL_PASS, null, PASSES.figure());
        Finding fails = finding(Property.NEXT, Outcome.CONDITIONAL_FAIL, null, FAILS.figure());
        assertEquals(
                Optional.empty(),
                MayHaveCertificate.reasonAgainst(CertificateSamples.judgementOf(Verdict.ACCEPTED, PASSES, passes)));
        String reason = MayHaveCertificate.reasonAgainst(
                        CertificateSamples.judgementOf(Verdict.REJECTED, passes, fails))
                .orElseThrow();
        assertTrue(reason.contains("; 1 requirement fails conditionally: next (pairs 1 and 2"), reason);
    }

    private static ConcessionStanding granted(Terms terms) {
        return new ConcessionStanding(List.of(ConcessionSamples.approved(terms)), Optional.empty(), Optional.empty());
    }

    @Test
    void aRejectedReelThatIsUsedAsItIsMay() {
        ConcessionStanding used = granted(new Terms.UseAsIs());
        assertEquals(
                Optional.empty(),
                MayHaveCertificate.reasonAgainst(
                        CertificateSamples.judgementOf(Verdict.REJECTED, PASSES, FAILS), used));
        String reason = MayHaveCertificate.reasonAgainst(
                        CertificateSamples.judgementOf(Verdict.REJECTED, FAILS, NOT_TESTED), used)
                .orElseThrow();
        assertTrue(reason.contains("return-loss (no data"), "what was not measured is not conceded: " + reason);
        assertFalse(reason.contains("fails"), reason);
    }

    @Test
    void anotherKindOfConcessionMakesNoRejectedRecordPass() {
        assertTrue(MayHaveCertificate.reasonAgainst(
                        CertificateSamples.judgementOf(Verdict.REJECTED, FAILS), granted(new Terms.Regrade("P-2")))
                .isPresent());
    }

    @Test
    void aConcessionThatIsNotApprovedYetIsNone() {
        ConcessionStanding open = new ConcessionStanding(
                List.of(), Optional.of(ConcessionSamples.asked(new Terms.UseAsIs())), Optional.empty());
        String reason = MayHaveCertificate.reasonAgainst(CertificateSamples.judgementOf(Verdict.REJECTED, FAILS), open)
                .orElseThrow();
        assertTrue(reason.endsWith("concession 12, which anna asked for, is not approved yet"), reason);
        Finding conditional = finding(Property.MUTUAL_CAPACITANCE, Outcome.CONDITIONAL_PASS, null, PASSES.figure());
        assertTrue(MayHaveCertificate.reasonAgainst(CertificateSamples.judgementOf(Verdict.ACCEPTED, conditional), open)
                .isPresent());
    }

    @Test
    void aShortenedReelIsTestedFirst() {
        ConcessionStanding cut = new ConcessionStanding(
                List.of(), Optional.empty(), Optional.of(ConcessionSamples.approved(new Terms.Shorten(200, "m"))));
        String reason = MayHaveCertificate.reasonAgainst(CertificateSamples.judgementOf(Verdict.ACCEPTED, PASSES), cut)
                .orElseThrow();
        assertTrue(reason.contains("shortened by concession 12"), reason);
    }

    @Test
    void missingIsNotPassing() {
        assertTrue(
                MayHaveCertificate.reasonAgainst(CertificateSamples.judgementOf(Verdict.INCOMPLETE, PASSES, NOT_TESTED))
                        .isPresent());
    }

    @Test
    void nothingJudgedIsNotAccepted() {
        String reason = MayHaveCertificate.reasonAgainst(CertificateSamples.judgementOf(Verdict.INCOMPLETE))
                .orElseThrow();
        assertTrue(reason.startsWith("nothing was judged"), reason);
    }

    /** So that no verdict but that of the findings can be certified. */
    @Test
    void noJudgementSaysOtherThanItsFindings() {
        for (Executable making : List.<Executable>of(
                () -> CertificateSamples.judgementOf(Verdict.ACCEPTED, PASSES, NOT_TESTED),
                () -> CertificateSamples.judgementOf(Verdict.ACCEPTED),
                () -> CertificateSamples.judgementOf(Verdict.INCOMPLETE, PASSES))) {
            assertThrows(IllegalArgumentException.class, making);
        }
    }
}
