package dev.reelproof.record.concession;

import static dev.reelproof.record.concession.ConcessionSamples.ANOTHER;
import static dev.reelproof.record.concession.ConcessionSamples.APPROVED;
import static dev.reelproof.record.concession.ConcessionSamples.approved;
import static dev.reelproof.record.concession.ConcessionSamples.asked;
import static dev.reelproof.record.concession.ConcessionSamples.judgement;
import static dev.reelproof.record.concession.ConcessionSamples.record;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.judgement.Outcome;
import dev.reelproof.record.TestRecord;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What a reel's concessions mean for its newest record. */
class ConcessionStandingTest {
    private static final TestRecord REJECTED = record(Outcome.FAIL);
    private static final Concession CUT = approved(new Terms.Shorten(200, "m"));

    private static TestRecord retest(double metres, int minutesAfter, String product) {
        return record(ANOTHER, judgement(Outcome.PASS), metres, APPROVED.plusMinutes(minutesAfter), product);
    }

    @Test
    void aUseAsItIsBearsOnItsVeryRecord() {
        Concession used = approved(new Terms.UseAsIs());
        assertEquals(
                Optional.of(used),
                ConcessionStanding.of(List.of(used), REJECTED).usedAsIs());
        assertEquals(ConcessionStanding.NONE, ConcessionStanding.of(List.of(used), retest(305, 1, "P-1")));
    }

    @Test
    void whatIsNotApprovedGrantsNothing() {
        Concession open = asked(new Terms.UseAsIs());
        assertEquals(
                new ConcessionStanding(List.of(), Optional.of(open), Optional.empty()),
                ConcessionStanding.of(List.of(open), REJECTED));
        assertEquals(ConcessionStanding.NONE, ConcessionStanding.of(List.of(open), retest(305, 1, "P-1")), "it lapsed");
    }

    @Test
    void isUnfinishedWhileItIsNotDecidedOrNotDone() {
        assertTrue(ConcessionStanding.of(List.of(asked(new Terms.UseAsIs())), REJECTED)
                .isUnfinished());
        assertTrue(ConcessionStanding.of(List.of(CUT), REJECTED).isUnfinished());
        assertFalse(ConcessionStanding.of(List.of(CUT), retest(200, 1, "P-1")).isUnfinished());
        assertFalse(ConcessionStanding.of(List.of(approved(new Terms.UseAsIs())), REJECTED)
                .isUnfinished());
        assertFalse(ConcessionStanding.NONE.isUnfinished());
    }

    @Test
    void aRegradeBearsOnWhateverIsOfItsProduct() {
        Concession regrade = approved(new Terms.Regrade("P-2"));
        assertEquals(
                List.of(regrade),
                ConcessionStanding.of(List.of(regrade), retest(305, 1, "P-2")).granted());
        assertEquals(
                List.of(),
                ConcessionStanding.of(List.of(regrade), retest(305, 1, "P-1")).granted());
    }

    @Test
    void aShortenedReelIsTestedAgainAtItsNewLength() {
        Optional<Concession> cut = Optional.of(CUT);
        assertEquals(cut, ConcessionStanding.of(List.of(CUT), REJECTED).untested());
        assertEquals(
                cut,
                ConcessionStanding.of(List.of(CUT), retest(200, -1, "P-1")).untested(),
                "a test before the approval is of the whole reel");
        assertEquals(
                cut,
                ConcessionStanding.of(List.of(CUT), retest(305, 1, "P-1")).untested(),
                "a test of the old length is of the whole reel");
        ConcessionStanding tested = ConcessionStanding.of(List.of(CUT), retest(203, 1, "P-1"));
        assertEquals(Optional.empty(), tested.untested());
        assertEquals(List.of(CUT), tested.granted());
    }
}
