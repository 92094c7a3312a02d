package dev.reelproof.app.hold;

import dev.reelproof.app.certificate.FindLives;
import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.genealogy.hold.HoldTarget;
import dev.reelproof.store.SearchTooLargeException;
import dev.reelproof.store.StatementTimeout;
import dev.reelproof.store.hold.HoldReach;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.util.List;
import java.util.Map;

/** Names the certificates that a new hold puts in question, for the audit trail. */
@ApplicationScoped
class QuestionedByHold {
    private static final String KEY = "questionedCertificates";
    private static final Duration LONGEST_SEARCH = Duration.ofSeconds(5);
    private static final int MOST_REELS = 200;

    private final HoldReach reach;
    private final FindLives lives;
    private final StatementTimeout timeout;

    QuestionedByHold(HoldReach reach, FindLives lives, StatementTimeout timeout) {
        this.reach = reach;
        this.lives = lives;
        this.timeout = timeout;
    }

    /**
     * What the audit trail tells of the certificates; nothing when there are none. In a transaction of its own: a hold stands, though
     * nobody can name in time what it reaches.
     */
    Map<String, Object> by(String plant, HoldTarget target) {
        try {
            return QuarkusTransaction.requiringNew()
                    .call(() -> timeout.within(
                            LONGEST_SEARCH, "the certificates were not found in time", () -> named(plant, target)));
        } catch (SearchTooLargeException e) {
            return Map.of(KEY, "too many to be named in time");
        }
    }

    private Map<String, Object> named(String plant, HoldTarget target) {
        List<String> reels = reach.certifiedReelsBelow(plant, target, MOST_REELS + 1);
        List<String> numbers = lives
                .standing(plant, reels.stream().limit(MOST_REELS).toList())
                .stream()
                .map(IssuedCertificate::number)
                .toList();
        if (reels.size() > MOST_REELS) {
            return Map.of(KEY, numbers, "andMore", true);
        }
        return numbers.isEmpty() ? Map.of() : Map.of(KEY, numbers);
    }
}
