package dev.reelproof.limit;

import java.util.Map;

/**
 * A correction law as a limit set names it.
 *
 * @param name the law's name, such as {@code copper-temperature}
 * @param parameters its coefficients by name
 */
public record LawSpec(String name, Map<String, Double> parameters) {

    public LawSpec {
        if (name == null || name.isBlank()) {
            throw new IllegalArgumentException("a correction names its law");
        }
        parameters = Map.copyOf(parameters);
        parameters.forEach((parameter, value) -> {
            if (!Double.isFinite(value)) {
                throw new IllegalArgumentException(
                        "the " + parameter + " of the law " + name + " must be finite, not " + value);
            }
        });
    }
}
