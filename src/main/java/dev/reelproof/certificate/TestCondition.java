package dev.reelproof.certificate;

import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What a certificate says of the conditions that a limit set states for a test. Limit sets also note there what the bench must mind, how
 * the source was read and what we made of it: these notes stay in the file. Of its sentences only those are printed that state a
 * temperature, a voltage, a frequency or a time, and speak neither of the source nor to the bench.
 */
final class TestCondition {
    private static final Pattern BETWEEN_SENTENCES = Pattern.compile("(?<=\\.)\\s+(?=[\\p{Lu}\\d])");
    private static final Pattern STATED =
            Pattern.compile("\\d\\s*(?:°C|°F|K|V|kV|Hz|kHz|MHz|s|min|h|hours?|minutes?|seconds?|days?)\\b|°[CF]");
    private static final Pattern REMARK = Pattern.compile(
            "(?i)\\b(?:ours|we|read|regulation(?:'s|’s)?|published|paragraph|source|extension|memory|judged|bench|sent|caution|corrected for)\\b");

    private TestCondition() {}

    /** What is printed of a condition, without its last full stop; empty when that is nothing. */
    static Optional<String> in(String condition) {
        int caution = condition.indexOf("Caution:");
        String rest = caution < 0 ? condition : condition.substring(0, caution);
        String printed = Stream.of(BETWEEN_SENTENCES.split(rest.strip()))
                .flatMap(sentence -> Stream.of(sentence.split("(?<=;)\\s+")))
                .filter(sentence -> STATED.matcher(sentence).find()
                        && !REMARK.matcher(sentence).find())
                .collect(Collectors.joining(" "))
                .strip();
        String bare = printed.replaceAll("[.;]$", "");
        return bare.isEmpty() ? Optional.empty() : Optional.of(bare);
    }
}
