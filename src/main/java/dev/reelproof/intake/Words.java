package dev.reelproof.intake;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** Wording of messages: what was sent, quoted, and the known word that it was probably meant to be. */
public final class Words {
    private static final int LONGEST_QUOTED = 60;

    /** Two letters exchanged in a word of five are two slips, and are still the same word. */
    private static final double MOST_SLIPS_A_LETTER = 0.4;

    private Words() {}

    /** The text in quotation marks, shortened when long. */
    public static String quoted(String text) {
        return "'" + (text.length() <= LONGEST_QUOTED ? text : text.substring(0, LONGEST_QUOTED) + "…") + "'";
    }

    /** "; did you mean 'x'?" when a known word is close, else the known words. */
    public static String suggestion(String unknown, Collection<String> known) {
        return nearest(unknown, known)
                .map(word -> "; did you mean '" + word + "'?")
                .orElse("; known: " + String.join(", ", known));
    }

    /** The known word that differs least from the unknown, if it differs in no more than two letters of five. */
    static Optional<String> nearest(String unknown, Collection<String> known) {
        if (unknown.length() > LONGEST_QUOTED) {
            return Optional.empty();
        }
        String word = unknown.toLowerCase(Locale.ROOT);
        return known.stream()
                .min(Comparator.comparingInt(candidate -> slips(word, candidate.toLowerCase(Locale.ROOT))))
                .filter(candidate -> slips(word, candidate.toLowerCase(Locale.ROOT))
                        <= MOST_SLIPS_A_LETTER * Math.max(word.length(), candidate.length()));
    }

    /** How many letters must be put in, taken out or changed to make one word of the other (Levenshtein's distance). */
    private static int slips(String one, String other) {
        int[] row = new int[other.length() + 1];
        for (int j = 0; j < row.length; j++) {
            row[j] = j;
        }
        for (int i = 1; i <= one.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j < row.length; j++) {
                int changed = diagonal + (one.charAt(i - 1) == other.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(changed, Math.min(row[j], row[j - 1]) + 1);
            }
        }
        return row[other.length()];
    }
}
