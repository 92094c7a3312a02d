package dev.reelproof.app.certificate;

import dev.reelproof.app.ConflictException;
import dev.reelproof.app.hold.HeldException;
import dev.reelproof.app.hold.HoldCheck;
import dev.reelproof.app.result.TestRules;
import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.certificate.MayHaveCertificate;
import dev.reelproof.certificate.life.Question;
import dev.reelproof.genealogy.hold.Hold;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.record.RegisteredReel;
import dev.reelproof.record.TestRecord;
import dev.reelproof.record.concession.ConcessionStanding;
import dev.reelproof.store.certificate.Withdrawals;
import dev.reelproof.store.concession.Concessions;
import dev.reelproof.store.limits.WrongRevisions;
import dev.reelproof.store.result.AttemptHistories;
import dev.reelproof.wording.Wording;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Optional;

/**
 * Finds out whether a reel may have a certificate of its newest record: not held, accepted or conceded, by limits that nobody found
 * wrong, not scrapped, and not taken back before. Until the transaction ends, nothing changes that.
 */
@ApplicationScoped
class MayBeCertified {
    private final HoldCheck holds;
    private final WrongRevisions wrongRevisions;
    private final FindQuestions questions;
    private final Withdrawals withdrawals;
    private final AttemptHistories histories;
    private final Concessions concessions;
    private final TestRules rules;

    MayBeCertified(
            HoldCheck holds,
            WrongRevisions wrongRevisions,
            FindQuestions questions,
            Withdrawals withdrawals,
            AttemptHistories histories,
            Concessions concessions,
            TestRules rules) {
        this.holds = holds;
        this.wrongRevisions = wrongRevisions;
        this.questions = questions;
        this.withdrawals = withdrawals;
        this.histories = histories;
        this.concessions = concessions;
        this.rules = rules;
    }

    /**
     * What may be certified.
     *
     * @param record the reel's newest record
     * @param standing what the reel's concessions mean for it
     */
    record Certifiable(TestRecord record, ConcessionStanding standing) {}

    /**
     * The record that may be certified, with the concessions that its certificate must name.
     *
     * @param newest the reel's newest record
     * @param certificate the certificate that it has already
     * @throws HeldException when the reel is on hold
     * @throws ConflictException when it may have none for another reason
     */
    @Transactional(Transactional.TxType.MANDATORY)
    Certifiable requireCertifiable(
            RegisteredReel reel, Optional<TestRecord> newest, Optional<IssuedCertificate> certificate) {
        List<Hold> open = holds.openOf(reel.plant(), reel.id());
        if (!open.isEmpty()) {
            throw HeldException.noCertificate(
                    reel.id(), open, certificate.map(IssuedCertificate::number).orElse(null));
        }
        TestRecord record = newest.orElseThrow(() -> new ConflictException("Reel " + reel.id() + " was never tested."));
        ConcessionStanding standing = ConcessionStanding.of(concessions.ofReel(reel.plant(), reel.id()), record);
        MayHaveCertificate.reasonAgainst(record.judgement(), standing).ifPresent(reason -> {
            throw refused(reel, reason);
        });
        if (rules.retests(reel.plant()).awaitsEngineer(histories.of(reel.plant(), reel.id()))) {
            throw refused(
                    reel,
                    "it passed after a failure and gets no certificate until an engineer accepts its attempt "
                            + record.attempt() + ".");
        }
        wrongRevisions.keepOut(reel.plant());
        against(reel, record.judgement()).ifPresent(question -> {
            throw refused(reel, question.sentence(Wording.english().certificates()));
        });
        certificate.flatMap(one -> withdrawals.of(reel.plant(), one.number())).ifPresent(withdrawal -> {
            throw refused(
                    reel,
                    "the certificate of its newest test, "
                            + certificate.orElseThrow().number() + ", was withdrawn ("
                            + withdrawal.reason() + "); it takes a new test to have another");
        });
        return new Certifiable(record, standing);
    }

    private Optional<Question> against(RegisteredReel reel, Judgement judgement) {
        return questions
                .limitsWrong(reel.plant(), judgement.limitSet(), judgement.revision())
                .or(() -> questions.scrapped(reel.plant(), reel.id()));
    }

    private static ConflictException refused(RegisteredReel reel, String reason) {
        return new ConflictException("Reel " + reel.id() + ": " + reason);
    }
}
