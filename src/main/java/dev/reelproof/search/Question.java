package dev.reelproof.search;

/**
 * What somebody looks for, as far as it counts.
 *
 * @param folded its letters and digits, folded; empty when it has none
 */
public record Question(String folded) {
    private static final String BEHIND_ALL = Character.toString(Character.MAX_CODE_POINT);

    /** The question that a person typed or a scanner sent. */
    public static Question of(String text) {
        return new Question(new FoldedText(text).key());
    }

    /** Whether nothing in particular is looked for. */
    public boolean isEmpty() {
        return folded.isEmpty();
    }

    /** What a key that answers it begins with. */
    public String key() {
        return SearchKeys.cut(folded);
    }

    /** In the order of code points behind every key that begins so, and before every other that follows. */
    public String behind() {
        return key() + BEHIND_ALL;
    }
}
