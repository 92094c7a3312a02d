package dev.reelproof.search;

import java.util.BitSet;
import java.util.Optional;

/** How well a text answers a question, the best first. Spaces, dashes and case never matter. */
public enum Match {
    /** The text is what was asked for. */
    EXACT("exact"),
    /** One or more whole words of it are. */
    WORDS("words"),
    /** It begins so. */
    BEGINNING("beginning"),
    /** One of its later words begins so. */
    WORD_BEGINNING("word-beginning"),
    /** It belongs to something that matches: a reel to its order. */
    BELONGING("belonging");

    private final String word;

    Match(String word) {
        this.word = word;
    }

    /** The match as answers spell it. */
    public String word() {
        return word;
    }

    /** How well a text itself answers a question; empty when it does not, or nothing in particular is asked. */
    public static Optional<Match> of(String text, Question question) {
        String asked = question.folded();
        FoldedText folded = new FoldedText(text);
        String key = folded.key();
        if (asked.isEmpty()) {
            return Optional.empty();
        }
        if (key.equals(asked)) {
            return Optional.of(EXACT);
        }
        BitSet starts = folded.starts();
        boolean beginsWord = false;
        int word = 0;
        for (int start = starts.nextSetBit(0);
                start >= 0 && word < SearchKeys.MOST;
                start = starts.nextSetBit(start + 1)) {
            word++;
            if (key.startsWith(asked, start)) {
                if (folded.isEnd(start + asked.length())) {
                    return Optional.of(WORDS);
                }
                beginsWord = true;
            }
        }
        if (key.startsWith(asked)) {
            return Optional.of(BEGINNING);
        }
        return beginsWord ? Optional.of(WORD_BEGINNING) : Optional.empty();
    }
}
