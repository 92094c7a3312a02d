package dev.reelproof.app.certificate;

import dev.reelproof.app.hold.FindHolds;
import dev.reelproof.app.result.TestRules;
import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.certificate.life.Question;
import dev.reelproof.genealogy.Disposition;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.limit.WrongRevision;
import dev.reelproof.record.RetestRule;
import dev.reelproof.record.concession.Concession;
import dev.reelproof.store.SearchTooLargeException;
import dev.reelproof.store.concession.Concessions;
import dev.reelproof.store.limits.WrongRevisions;
import dev.reelproof.store.reel.Dispositions;
import dev.reelproof.store.result.AttemptHistories;
import dev.reelproof.store.result.RecordSummaries;
import dev.reelproof.store.result.RecordSummaries.Newest;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Finds what speaks against certificates now: open holds, newer tests that were not passed or that an engineer has yet to accept, limits
 * found wrong, concessions since, reels that were scrapped.
 */
@ApplicationScoped
public class FindQuestions {
    private final FindHolds holds;
    private final RecordSummaries records;
    private final WrongRevisions wrongRevisions;
    private final Dispositions dispositions;
    private final Concessions concessions;
    private final AttemptHistories histories;
    private final TestRules rules;

    FindQuestions(
            FindHolds holds,
            RecordSummaries records,
            WrongRevisions wrongRevisions,
            Dispositions dispositions,
            Concessions concessions,
            AttemptHistories histories,
            TestRules rules) {
        this.holds = holds;
        this.records = records;
        this.wrongRevisions = wrongRevisions;
        this.dispositions = dispositions;
        this.concessions = concessions;
        this.histories = histories;
        this.rules = rules;
    }

    /**
     * What speaks against each of these certificates.
     *
     * @return the questions by the certificate's record
     * @throws SearchTooLargeException when the holds are not found in time
     */
    @Transactional
    public Map<IssuedCertificate, List<Question>> of(String plant, Collection<IssuedCertificate> certificates) {
        Set<String> reels = new HashSet<>();
        certificates.forEach(certificate -> reels.add(certificate.reel()));
        Map<String, List<Question>> ofReels = ofReels(plant, reels);
        Map<String, Newest> newest = records.newestVerdicts(plant, reels);
        Map<String, List<Concession>> conceded = concessions.ofReels(plant, reels);
        List<WrongRevision> wrong = wrongRevisions.all(plant);
        Map<IssuedCertificate, List<Question>> questions = new HashMap<>();
        for (IssuedCertificate certificate : certificates) {
            List<Question> own = new ArrayList<>(ofReels.getOrDefault(certificate.reel(), List.of()));
            Optional.ofNullable(newest.get(certificate.reel())).ifPresent(record -> {
                newerTest(certificate, record).ifPresent(own::add);
                own.addAll(Question.ofConcessions(
                        conceded.getOrDefault(certificate.reel(), List.of()), record.id(), certificate));
            });
            if (!wrong.isEmpty()) {
                records.judgedBy(plant, certificate.record()).stream()
                        .flatMap(by -> wrong.stream()
                                .filter(one -> one.limitSet().equals(by.limitSet()) && one.revision() == by.revision()))
                        .map(FindQuestions::limitsWrong)
                        .forEach(own::add);
            }
            questions.put(certificate, own);
        }
        return questions;
    }

    /** What is said of certificates of which the newest test of their reel was not passed; holds are not asked for. */
    @Transactional
    public Optional<Question> newerTest(String plant, IssuedCertificate certificate) {
        return records.newestVerdict(plant, certificate.reel()).flatMap(newest -> newerTest(certificate, newest));
    }

    private static Optional<Question> newerTest(IssuedCertificate certificate, Newest newest) {
        return newest.id().equals(certificate.record()) || newest.verdict() == Verdict.ACCEPTED
                ? Optional.empty()
                : Optional.of(new Question.NewerTest(newest.attempt(), newest.verdict(), newest.finished()));
    }

    private static Question limitsWrong(WrongRevision wrong) {
        return new Question.LimitsWrong(wrong.limitSet(), wrong.revision(), wrong.reason());
    }

    /** What was found wrong with the revision of a limit set. */
    @Transactional
    public Optional<Question> limitsWrong(String plant, String limitSet, int revision) {
        return wrongRevisions.of(plant, limitSet, revision).map(FindQuestions::limitsWrong);
    }

    /** That the reel was scrapped. */
    @Transactional
    public Optional<Question> scrapped(String plant, String reel) {
        return Optional.ofNullable(scrapped(plant, Set.of(reel)).get(reel));
    }

    private Map<String, List<Question>> ofReels(String plant, Set<String> reels) {
        Map<String, List<Question>> questions = new HashMap<>();
        for (String reel : holds.heldAmong(plant, reels)) {
            questions.put(
                    reel,
                    new ArrayList<>(holds.ofReel(plant, reel).stream()
                            .map(hold -> new Question.Held(hold.inWords()))
                            .toList()));
        }
        scrapped(plant, reels).forEach((reel, question) -> questions
                .computeIfAbsent(reel, none -> new ArrayList<>())
                .add(question));
        awaitingEngineer(plant, reels).forEach(reel -> questions
                .computeIfAbsent(reel, none -> new ArrayList<>())
                .add(new Question.AwaitsEngineer()));
        return questions;
    }

    private List<String> awaitingEngineer(String plant, Set<String> reels) {
        RetestRule rule = rules.retests(plant);
        return rule.asksEngineer()
                ? histories.of(plant, reels).entrySet().stream()
                        .filter(entry -> rule.awaitsEngineer(entry.getValue()))
                        .map(Map.Entry::getKey)
                        .toList()
                : List.of();
    }

    private Map<String, Question> scrapped(String plant, Set<String> reels) {
        List<LotId> ids =
                reels.stream().map(LotId::named).flatMap(Optional::stream).toList();
        Map<String, Question> questions = new HashMap<>();
        Stream.of(dispositions.latest(plant, ids))
                .flatMap(latest -> latest.entrySet().stream())
                .filter(entry -> entry.getValue().state() == Disposition.State.SCRAPPED)
                .forEach(entry -> questions.put(entry.getKey().value(), new Question.Scrapped()));
        return questions;
    }
}
