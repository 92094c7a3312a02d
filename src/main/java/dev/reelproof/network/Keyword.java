package dev.reelproof.network;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A keyword of a Touchstone file of version 2.0, such as {@code [Number of Ports] 4}.
 *
 * @param name what stands in the brackets, in lower case and evenly spaced
 * @param written the same as written
 * @param value what follows the brackets
 */
record Keyword(String name, String written, String value) {
    static final String TWO_PORT_DATA_ORDER = "two-port data order";

    private static final Pattern FORM = Pattern.compile("\\[([^\\]]*)\\](.*)");

    /** The keyword of a line that begins with a bracket. */
    static Keyword read(String text, TouchstoneLines lines) {
        Matcher matcher = FORM.matcher(text);
        if (!matcher.matches()) {
            throw lines.fault("a keyword begins here that no ']' closes");
        }
        String name = TouchstoneLines.evenlySpaced(matcher.group(1).strip().toLowerCase(Locale.ROOT));
        return new Keyword(
                name.equals("two-port order") ? TWO_PORT_DATA_ORDER : name,
                matcher.group(1),
                matcher.group(2).strip());
    }

    /** The keyword as it may stand in a message. */
    String quoted() {
        return "[" + TouchstoneLines.quotable(written) + "]";
    }
}
