package dev.reelproof.wording;

import dev.reelproof.analysis.CountTable;
import dev.reelproof.analysis.Evidence;
import dev.reelproof.analysis.Exposure;
import dev.reelproof.analysis.Suspect;
import dev.reelproof.analysis.TestCause;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Says that the test itself may be what failing reels have in common. */
final class TestCauseSentences {
    /** How many lots, machines and the like a sentence names. */
    private static final int MOST_NAMED = 3;

    private static final double PERCENT = 100;

    private final Catalogue words;

    TestCauseSentences(Catalogue words) {
        this.words = words;
    }

    String of(TestCause cause, Evidence evidence) {
        return words.text(
                cause.cannotBeToldFrom().isEmpty() ? "suspects.test-likelier" : "suspects.test-as-likely",
                "found",
                found(cause.suspect(), evidence),
                "explained",
                names(cause.explains()),
                "alike",
                names(cause.cannotBeToldFrom()));
    }

    private String found(Suspect suspect, Evidence evidence) {
        String with = words.text(
                "tested." + suspect.first().factor().word(),
                "value",
                suspect.first().value());
        Suspect.Margins margins = suspect.margins();
        if (evidence == Evidence.MARGINS && margins != null) {
            return words.text(
                    "suspects.lower-margins",
                    "with",
                    with,
                    "percent",
                    Figures.fixed(PERCENT * margins.shareLower(), 0));
        }
        CountTable counts = suspect.counts();
        return words.text(
                "suspects.more-failing",
                "with",
                with,
                "exposed",
                String.valueOf(counts.exposed()),
                "exposedFailing",
                String.valueOf(counts.exposedFailing()),
                "others",
                String.valueOf(counts.others()),
                "othersFailing",
                String.valueOf(counts.othersFailing()));
    }

    private @Nullable String names(List<Exposure> exposures) {
        if (exposures.isEmpty()) {
            return null;
        }
        String named = exposures.stream()
                .limit(MOST_NAMED)
                .map(one -> words.text("factor." + one.factor().word(), "value", one.value()))
                .collect(Collectors.joining(", "));
        int more = exposures.size() - MOST_NAMED;
        return more > 0 ? words.text("suspects.and-more", "named", named, "more", String.valueOf(more)) : named;
    }
}
