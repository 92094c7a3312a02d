package dev.reelproof.wording;

import dev.reelproof.judgement.Verdict;
import dev.reelproof.record.concession.Terms;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;

/** What is said of a certificate's life and of a file that claims to be a certificate. */
public final class CertificateWords {
    private final Catalogue words;

    CertificateWords(Catalogue words) {
        this.words = words;
    }

    /** The name of a state, by its word. */
    public String state(String word) {
        return switch (word) {
            case "current" -> words.text("certificate.current");
            case "in-question" -> words.text("certificate.in-question");
            case "superseded" -> words.text("certificate.superseded");
            case "withdrawn" -> words.text("certificate.withdrawn");
            case "altered" -> words.text("certificate.altered");
            case "unknown" -> words.text("certificate.unknown");
            default -> throw new IllegalArgumentException("a certificate has no state '" + word + "'");
        };
    }

    /** That nothing speaks against it. */
    public String current() {
        return words.text("certificate.current.sentence");
    }

    /** That something speaks against it. */
    public String inQuestion() {
        return words.text("certificate.in-question.sentence");
    }

    /** That it was taken back. */
    public String withdrawn() {
        return words.text("certificate.withdrawn.sentence");
    }

    /** That a later issue of its number has taken its place. */
    public String supersededByIssue(int issue) {
        return words.text("certificate.superseded.by-issue", "issue", String.valueOf(issue));
    }

    /** That the certificate of a later test has taken its place. */
    public String supersededByNumber(String number) {
        return words.text("certificate.superseded.by-number", "number", number);
    }

    /** That each of the certificates that a collective certificate names is current. */
    public String collectiveCurrent(int certificates) {
        return words.text("certificate.collective.current", "count", String.valueOf(certificates));
    }

    /** That some of them are not. */
    public String collectiveNotCurrent(int notCurrent, int certificates) {
        return words.text(
                "certificate.collective.not-current",
                "count",
                String.valueOf(notCurrent),
                "all",
                String.valueOf(certificates));
    }

    /** Which of them is not, and why. */
    public String collectiveReason(String reel, String number, String state, String why) {
        return words.text("certificate.collective.reason", "reel", reel, "number", number, "state", state, "why", why);
    }

    /** That a file is not what was issued under its number. */
    public String altered() {
        return words.text("certificate.altered.sentence");
    }

    /** That nothing was issued here that a file could be. */
    public String unknown() {
        return words.text("certificate.unknown.sentence");
    }

    /** That a file states no number of a certificate. */
    public String noNumber() {
        return words.text("certificate.unknown.no-number");
    }

    /** Who withdrew it and why. */
    public String withdrawnBecause(String askedBy, String approvedBy, OffsetDateTime at, String reason) {
        return words.text(
                "certificate.withdrawn.because",
                "asker",
                askedBy,
                "approver",
                approvedBy,
                "day",
                day(at),
                "reason",
                reason);
    }

    /** That a hold reaches the reel. */
    public String held(String hold) {
        return words.text("question.hold", "hold", hold);
    }

    /** The same, without what is the plant's own affair. */
    public String heldInPublic() {
        return words.text("question.hold.in-public");
    }

    /** That a newer test was not passed. */
    public String newerTest(int attempt, Verdict verdict, OffsetDateTime finished) {
        return words.text(
                "question.newer-test",
                "attempt",
                String.valueOf(attempt),
                "day",
                day(finished),
                "verdict",
                words.text("verdict." + Look.of(verdict, false).word()));
    }

    /** The same, without what is the plant's own affair. */
    public String newerTestInPublic() {
        return words.text("question.newer-test.in-public");
    }

    /** That the newest test passed after a failure and was not accepted yet. */
    public String awaitsEngineer() {
        return words.text("question.awaits-engineer");
    }

    /** The same, without what is the plant's own affair. */
    public String awaitsEngineerInPublic() {
        return words.text("question.awaits-engineer.in-public");
    }

    /** That it was judged by limits that were found wrong. */
    public String limitsWrong(String limitSet, int revision, String reason) {
        return words.text(
                "question.limits-wrong", "set", limitSet, "revision", String.valueOf(revision), "reason", reason);
    }

    /** The same, without what is the plant's own affair. */
    public String limitsWrongInPublic(String limitSet, int revision) {
        return words.text("question.limits-wrong.in-public", "set", limitSet, "revision", String.valueOf(revision));
    }

    /** That what becomes of the reel is asked for and not decided. */
    public String concessionOpen(long concession) {
        return words.text("question.concession-open", "id", String.valueOf(concession));
    }

    /** The same, without what is the plant's own affair. */
    public String concessionOpenInPublic() {
        return words.text("question.concession-open.in-public");
    }

    /** That the reel is no longer what the certificate describes. */
    public String reelChanged(long concession, Terms terms) {
        return words.text(
                "question.reel-changed",
                "id",
                String.valueOf(concession),
                "terms",
                new ConcessionSentences(words).title(terms));
    }

    /** The same, without what is the plant's own affair. */
    public String reelChangedInPublic() {
        return words.text("question.reel-changed.in-public");
    }

    /** That the reel was scrapped. */
    public String scrapped() {
        return words.text("question.scrapped");
    }

    /** That bytes follow the issued file. */
    public String appended(int bytes) {
        return words.text("altered.appended", "bytes", String.valueOf(bytes));
    }

    /** That pages are missing or were added. */
    public String pageCount(int found, int issued) {
        return words.text("altered.page-count", "found", String.valueOf(found), "issued", String.valueOf(issued));
    }

    /** That something else is drawn on a page. */
    public String pageDiffers(int page) {
        return words.text("altered.page", "page", String.valueOf(page));
    }

    /** That an attached file is another. */
    public String attachmentExchanged(String name) {
        return words.text("altered.attachment.exchanged", "name", name);
    }

    /** That an attached file is missing. */
    public String attachmentMissing(String name) {
        return words.text("altered.attachment.missing", "name", name);
    }

    /** That a file was attached. */
    public String attachmentAdded(String name) {
        return words.text("altered.attachment.added", "name", name);
    }

    /** That the bytes alone differ. */
    public String otherBytes() {
        return words.text("altered.bytes");
    }

    /** That a file could not be looked into. */
    public String unreadable() {
        return words.text("altered.unreadable");
    }

    private static String day(OffsetDateTime time) {
        return time.withOffsetSameInstant(ZoneOffset.UTC).toLocalDate().toString();
    }
}
