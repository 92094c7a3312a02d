package dev.reelproof.judgement;

import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A sentence with named parts.
 *
 * <p>{@code {pair}} stands for the part of that name. What stands between square brackets is left out when one of its parts is not
 * there.
 */
public final class Message {
    private static final Pattern SECTION = Pattern.compile("\\[([^\\[\\]]*)]");
    private static final Pattern PART = Pattern.compile("\\{([A-Za-z][A-Za-z0-9]*)}");

    private Message() {}

    /**
     * The sentence.
     *
     * @param pattern the sentence with its parts in braces
     * @param parts the parts by name; a name without a value is a part that is not there
     * @throws IllegalArgumentException when a part outside square brackets is not there
     */
    public static String fill(String pattern, Map<String, String> parts) {
        StringBuilder whole = new StringBuilder();
        Matcher section = SECTION.matcher(pattern);
        int from = 0;
        while (section.find()) {
            whole.append(parts(pattern.substring(from, section.start()), parts));
            if (hasAll(section.group(1), parts)) {
                whole.append(parts(section.group(1), parts));
            }
            from = section.end();
        }
        return whole.append(parts(pattern.substring(from), parts)).toString();
    }

    private static boolean hasAll(String text, Map<String, String> parts) {
        return PART.matcher(text).results().allMatch(part -> parts.get(part.group(1)) != null);
    }

    private static String parts(String text, Map<String, String> parts) {
        return PART.matcher(text).replaceAll(part -> {
            String value = parts.get(part.group(1));
            if (value == null) {
                throw new IllegalArgumentException(
                        "'" + text + "' needs the part '" + part.group(1) + "'; there are " + parts.keySet());
            }
            return Matcher.quoteReplacement(value);
        });
    }
}
