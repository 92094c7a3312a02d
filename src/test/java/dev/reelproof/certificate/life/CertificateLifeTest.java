package dev.reelproof.certificate.life;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.record.concession.Concession;
import dev.reelproof.record.concession.ConcessionSamples;
import dev.reelproof.record.concession.Terms;
import dev.reelproof.wording.CertificateWords;
import dev.reelproof.wording.Wording;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

/** The state follows from what is known: withdrawn before superseded, superseded before in question, current only in the end. */
class CertificateLifeTest {
    private static final OffsetDateTime DAY = OffsetDateTime.parse("2026-03-02T14:09:30Z");
    private static final CertificateWords WORDS = Wording.english().certificates();
    private static final Withdrawal WITHDRAWAL = new Withdrawal("wrong customer", "ben", "anna", DAY);
    private static final Question HELD =
            new Question.Held("hold 7 of lot AC-1, placed by anna on 2026-03-02: bare spots");

    private static IssuedCertificate certificate(String number, int issue, OffsetDateTime issued) {
        return new IssuedCertificate("north", number, issue, new UUID(0, 1), "R-1", issued, null, null, "0", null);
    }

    private static CertificateLife life(boolean withdrawn, boolean superseded, boolean questioned) {
        return new CertificateLife(
                superseded ? new Succession(Optional.of(2), Optional.empty()) : Succession.NONE,
                withdrawn ? Optional.of(WITHDRAWAL) : Optional.empty(),
                questioned ? List.of(HELD) : List.of());
    }

    @Property
    void isCurrentOnlyWhenNothingIsKnownAgainstIt(
            @ForAll boolean withdrawn, @ForAll boolean superseded, @ForAll boolean questioned) {
        CertificateLife life = life(withdrawn, superseded, questioned);
        assertEquals(!withdrawn && !superseded && !questioned, life.isCurrent());
        assertEquals(withdrawn, life.state() == CertificateState.WITHDRAWN);
        assertEquals(!withdrawn && superseded, life.state() == CertificateState.SUPERSEDED);
        assertEquals(!withdrawn && !superseded && questioned, life.state() == CertificateState.IN_QUESTION);
        assertFalse(life.sentence(WORDS).isBlank());
    }

    @Test
    void aLaterIssueTakesThePlaceOfTheEarlier() {
        IssuedCertificate first = certificate("NORTH-2026-000001", 1, DAY);
        IssuedCertificate second = certificate("NORTH-2026-000001", 2, DAY.plusDays(1));
        List<IssuedCertificate> all = List.of(second, first);
        assertEquals(Optional.of(2), Succession.of(first, all).issue());
        assertFalse(Succession.of(second, all).isSuperseded());
    }

    @Test
    void theCertificateOfALaterTestTakesThePlaceOfAnEarlierOneWithAllItsIssues() {
        IssuedCertificate first = certificate("NORTH-2026-000001", 1, DAY);
        IssuedCertificate reissued = certificate("NORTH-2026-000001", 2, DAY.plusDays(2));
        IssuedCertificate later = certificate("NORTH-2026-000002", 1, DAY.plusDays(3));
        List<IssuedCertificate> all = List.of(first, reissued, later);
        assertEquals(
                Optional.of("NORTH-2026-000002"), Succession.of(reissued, all).number());
        assertFalse(Succession.of(later, all).isSuperseded());
    }

    @Test
    void whatWasReissuedAfterAnotherWasIssuedDoesNotTakeItsPlace() {
        IssuedCertificate first = certificate("NORTH-2026-000001", 1, DAY);
        IssuedCertificate other = certificate("NORTH-2026-000002", 1, DAY.plusDays(1));
        IssuedCertificate again = certificate("NORTH-2026-000002", 2, DAY.plusDays(9));
        assertTrue(Succession.of(first, List.of(first, other, again)).isSuperseded());
        assertFalse(Succession.of(again, List.of(first, other, again)).isSuperseded());
    }

    @Test
    void whoHoldsTheCertificateLearnsNothingThatIsThePlantsOwnAffair() {
        CertificateLife life = new CertificateLife(
                Succession.NONE,
                Optional.empty(),
                List.of(
                        HELD,
                        HELD,
                        new Question.NewerTest(2, Verdict.REJECTED, DAY),
                        new Question.LimitsWrong("category-6a-cable", 1, "a digit was lost")));
        String told = String.join(" ", life.publicReasons(WORDS));
        for (String own : List.of("anna", "AC-1", "bare spots", "attempt", "rejected", "digit")) {
            assertFalse(told.contains(own), told);
        }
        assertEquals(3, life.publicReasons(WORDS).size(), "two holds are one reason");
        assertTrue(life.reasons(WORDS).get(0).contains("bare spots"));
        assertTrue(
                life.reasons(WORDS).get(2).contains("rejected"),
                life.reasons(WORDS).toString());
    }

    @Test
    void aPassedTestPutsNothingInQuestion() {
        assertThrows(IllegalArgumentException.class, () -> new Question.NewerTest(2, Verdict.ACCEPTED, DAY));
    }

    private static List<String> kinds(Concession concession, UUID newest, OffsetDateTime issued) {
        return Question.ofConcessions(List.of(concession), newest, certificate("NORTH-2026-000001", 1, issued)).stream()
                .map(Question::kind)
                .toList();
    }

    @Test
    void aConcessionSpeaksAgainstWhatWasIssuedBefore() {
        UUID newest = ConcessionSamples.RECORD;
        OffsetDateTime before = ConcessionSamples.APPROVED.minusSeconds(1);
        OffsetDateTime after = ConcessionSamples.APPROVED.plusSeconds(1);
        Concession open = ConcessionSamples.asked(new Terms.UseAsIs());
        assertEquals(List.of("concession-open"), kinds(open, newest, before));
        assertEquals(List.of(), kinds(open, ConcessionSamples.ANOTHER, before), "it lapsed");
        assertEquals(List.of(), kinds(ConcessionSamples.approved(new Terms.UseAsIs()), newest, before));
        for (Terms change : List.of(new Terms.Regrade("P-2"), new Terms.Shorten(200, "m"))) {
            assertEquals(List.of("reel-changed"), kinds(ConcessionSamples.approved(change), newest, before));
            assertEquals(List.of(), kinds(ConcessionSamples.approved(change), newest, after));
        }
        assertThrows(IllegalArgumentException.class, () -> new Question.ReelChanged(1, new Terms.UseAsIs()));
    }

    @Test
    void whoHoldsTheCertificateLearnsNothingOfAConcessionButThatThereIsOne() {
        CertificateLife life = new CertificateLife(
                Succession.NONE,
                Optional.empty(),
                List.of(new Question.ConcessionOpen(12), new Question.ReelChanged(13, new Terms.Shorten(200, "m"))));
        assertEquals(
                List.of(
                        "the plant has not decided what becomes of the reel",
                        "the plant regraded or shortened the reel after the certificate was issued"),
                life.publicReasons(WORDS));
        assertTrue(life.reasons(WORDS)
                .get(1)
                .endsWith("by concession 13 after the certificate was issued: Shorten to 200 m"));
    }

    @Test
    void nobodyWithdrawsAlone() {
        assertThrows(IllegalArgumentException.class, () -> new Withdrawal("r", "ben", "ben", DAY));
    }
}
