package dev.reelproof.record;

import static dev.reelproof.record.ShippingNeed.CERTIFICATE;
import static dev.reelproof.record.ShippingNeed.COMPLETE_TEST;
import static dev.reelproof.record.ShippingNeed.CONCESSION;
import static dev.reelproof.record.ShippingNeed.CURRENT_CERTIFICATE;
import static dev.reelproof.record.ShippingNeed.ENGINEER;
import static dev.reelproof.record.ShippingNeed.NEW_TEST;
import static dev.reelproof.record.ShippingNeed.PASSED_TEST;
import static dev.reelproof.record.ShippingNeed.RELEASE;
import static dev.reelproof.record.ShippingNeed.TEST;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.reelproof.judgement.Verdict;
import dev.reelproof.record.ShippingNeed.Paper;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What a reel lacks, the first to be done first. */
class ShippingNeedTest {
    @Test
    void anAcceptedReelWithACurrentCertificateLacksNothing() {
        assertEquals(List.of(), ShippingNeed.of(Verdict.ACCEPTED, false, false, false, false, Paper.CURRENT));
    }

    @Test
    void aReelWithoutACertificateLacksItsTestFirst() {
        assertEquals(List.of(TEST, CERTIFICATE), ShippingNeed.of(null, false, false, false, false, Paper.NONE));
        assertEquals(
                List.of(COMPLETE_TEST, CERTIFICATE),
                ShippingNeed.of(Verdict.INCOMPLETE, false, false, false, false, Paper.NONE));
        assertEquals(
                List.of(PASSED_TEST, CERTIFICATE),
                ShippingNeed.of(Verdict.REJECTED, false, false, false, false, Paper.NONE));
        assertEquals(List.of(CERTIFICATE), ShippingNeed.of(Verdict.ACCEPTED, false, false, false, false, Paper.NONE));
    }

    @ParameterizedTest
    @EnumSource(Paper.class)
    void noCertificateMakesUpForAHoldOrAnEngineer(Paper paper) {
        assertEquals(
                RELEASE,
                ShippingNeed.of(Verdict.ACCEPTED, false, false, false, true, paper)
                        .get(0));
        assertEquals(
                ENGINEER,
                ShippingNeed.of(Verdict.ACCEPTED, false, false, true, false, paper)
                        .get(0));
        assertEquals(
                List.of(ENGINEER, RELEASE),
                ShippingNeed.of(Verdict.ACCEPTED, false, false, true, true, paper)
                        .subList(0, 2));
    }

    @Test
    void anApprovedConcessionStandsForAPassedTest() {
        assertEquals(List.of(CERTIFICATE), ShippingNeed.of(Verdict.REJECTED, true, false, false, false, Paper.NONE));
        assertEquals(List.of(), ShippingNeed.of(Verdict.REJECTED, true, false, false, false, Paper.CURRENT));
    }

    @Test
    void aConcessionThatIsNotDecidedOrNotDoneKeepsTheReel() {
        assertEquals(
                List.of(PASSED_TEST, CONCESSION, CERTIFICATE),
                ShippingNeed.of(Verdict.REJECTED, false, true, false, false, Paper.NONE));
        assertEquals(List.of(CONCESSION), ShippingNeed.of(Verdict.ACCEPTED, false, true, false, false, Paper.CURRENT));
    }

    @Test
    void aWithdrawnCertificateOfTheNewestTestTakesANewTest() {
        assertEquals(List.of(NEW_TEST), ShippingNeed.of(Verdict.ACCEPTED, false, false, false, false, Paper.WITHDRAWN));
    }

    @Test
    void aCertificateInQuestionForAReasonOfItsOwnIsNamed() {
        assertEquals(
                List.of(CURRENT_CERTIFICATE),
                ShippingNeed.of(Verdict.ACCEPTED, false, false, false, false, Paper.IN_QUESTION));
        assertEquals(
                List.of(PASSED_TEST), ShippingNeed.of(Verdict.REJECTED, false, false, false, false, Paper.IN_QUESTION));
    }
}
