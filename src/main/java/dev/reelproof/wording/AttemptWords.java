package dev.reelproof.wording;

import dev.reelproof.judgement.Verdict;
import dev.reelproof.record.Attempt;
import dev.reelproof.record.AttemptHistory;
import dev.reelproof.record.RetestAcceptance;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * One test of a reel among its tests, as a person reads it.
 *
 * @param summary what it came to at which attempt, and what the tests before it came to
 * @param older that a newer test decides, or a later judgement of this one, and what that came to; null for the one that decides
 * @param awaiting that it counts only once an engineer has accepted it; null unless it is so
 * @param accepted who accepted it, and why; null unless somebody did
 */
public record AttemptWords(
        String summary, @Nullable String older, @Nullable String awaiting, @Nullable String accepted) {

    static AttemptWords of(AttemptHistory history, UUID record, boolean awaitsEngineer, Catalogue words) {
        Attempt attempt = history.of(record);
        int order = history.orderOf(record);
        RetestAcceptance acceptance = attempt.acceptance();
        return new AttemptWords(
                words.text(
                        "attempt.summary",
                        "verdict",
                        words.text("verdict." + attempt.verdictOf(record).word()),
                        "attempt",
                        String.valueOf(attempt.number()),
                        "order",
                        order == attempt.number() ? null : String.valueOf(order),
                        "count",
                        String.valueOf(history.count()),
                        "earlier",
                        earlier(history.earlierVerdicts(record), words)),
                older(history, record, words),
                awaitsEngineer ? words.text("attempt.awaiting") : null,
                acceptance == null
                        ? null
                        : words.text(
                                "attempt.accepted",
                                "by",
                                acceptance.acceptedBy(),
                                "day",
                                acceptance.at().toLocalDate().toString(),
                                "reason",
                                acceptance.reason()));
    }

    private static @Nullable String older(AttemptHistory history, UUID record, Catalogue words) {
        if (history.isNewest(record)) {
            return null;
        }
        Attempt newest = history.newest().orElseThrow();
        return words.text(
                newest.isOf(record) ? "attempt.judged-again" : "attempt.older",
                "attempt",
                String.valueOf(newest.number()),
                "verdict",
                words.text("verdict." + newest.decidingVerdict().word()));
    }

    /** "rejected twice, incomplete once"; null where nothing was tested before. */
    private static @Nullable String earlier(List<Verdict> verdicts, Catalogue words) {
        String counted = Arrays.stream(Verdict.values())
                .map(verdict -> counted(verdict, verdicts, words))
                .filter(Objects::nonNull)
                .collect(Collectors.joining(", "));
        return counted.isEmpty() ? null : counted;
    }

    private static @Nullable String counted(Verdict verdict, List<Verdict> verdicts, Catalogue words) {
        long count = verdicts.stream().filter(verdict::equals).count();
        if (count == 0) {
            return null;
        }
        String times = count == 1 ? "attempt.once" : count == 2 ? "attempt.twice" : "attempt.times";
        return words.text(times, "verdict", words.text("verdict." + verdict.word()), "count", String.valueOf(count));
    }
}
