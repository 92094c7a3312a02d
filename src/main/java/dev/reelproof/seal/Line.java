package dev.reelproof.seal;

/** A line of a text that is hashed or signed: no line may pass for two. */
final class Line {
    private Line() {}

    static void require(String what, String text) {
        if (!(!text.isBlank() && text.chars().noneMatch(Character::isISOControl))) {
            throw new IllegalArgumentException(
                    what + " must be one line of text, not '" + text.replace("\n", "\\n") + "'");
        }
    }
}
