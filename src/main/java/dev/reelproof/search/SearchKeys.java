package dev.reelproof.search;

import java.util.List;

/**
 * The keys under which a text is kept, so that one look for keys that begin with a question's key finds it: the folded text from the
 * beginning of each of its words to its end, the whole text first.
 */
public final class SearchKeys {
    /** Whoever changes what the keys of a text are counts up; the store then makes all its keys anew. */
    public static final int REVISION = 1;

    /** No key is longer, in UTF-16 units; two texts that differ beyond have the same key, and {@link Match} tells them apart. */
    static final int LONGEST = 80;

    /** No text has more keys; what begins with a later word is not found by it. */
    static final int MOST = 16;

    private SearchKeys() {}

    /** The keys of a text; none when it has neither letter nor digit. */
    public static List<String> of(String text) {
        FoldedText folded = new FoldedText(text);
        String key = folded.key();
        return folded.starts().stream()
                .limit(MOST)
                .mapToObj(start -> cut(key.substring(start)))
                .distinct()
                .toList();
    }

    /** The first characters of a key, none of them halved. */
    static String cut(String key) {
        if (key.length() <= LONGEST) {
            return key;
        }
        return key.substring(0, Character.isHighSurrogate(key.charAt(LONGEST - 1)) ? LONGEST - 1 : LONGEST);
    }
}
