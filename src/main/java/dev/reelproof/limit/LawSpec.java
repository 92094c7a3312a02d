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
        parameters = Map.copyOf(parameters);
    }
}
