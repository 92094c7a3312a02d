package dev.reelproof.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Each language that certificates are printed in has all of their words, with the same parts as in English, and no others. */
class CertificateLanguagesTest {
    /** What a certificate prints; signs and what is said to the bench are not among it. */
    private static final Pattern PRINTED =
            Pattern.compile("(property|statistic|scope|per-unit|units|range|limit|sense|place|end|label|axis"
                    + "|probability|note|rule|rule-in-full|uncertainty|rounding|statement|declared|law|law-part|paper|role)\\b.*"
                    + "|outcome\\.[a-z-]+|verdict\\.(accepted|conditional|rejected|incomplete|conformity)"
                    + "|concession\\.(persons|[a-z-]+\\.statement)"
                    + "|attempt\\.(summary|once|twice|times)");

    private static final Pattern PART = Pattern.compile("\\{\\w+}");

    private static Map<String, String> words(String file) throws IOException {
        Properties properties = new Properties();
        try (InputStream in = Catalogue.class.getResourceAsStream(file)) {
            properties.load(new InputStreamReader(in, StandardCharsets.UTF_8));
        }
        return properties.stringPropertyNames().stream()
                .collect(Collectors.toMap(key -> key, properties::getProperty, (one, same) -> one, TreeMap::new));
    }

    private static Map<String, Set<String>> parts(Map<String, String> words) {
        return words.entrySet().stream()
                .filter(one -> PRINTED.matcher(one.getKey()).matches())
                .collect(Collectors.toMap(
                        Map.Entry::getKey,
                        one -> PART.matcher(one.getValue())
                                .results()
                                .map(MatchResult::group)
                                .collect(Collectors.toCollection(TreeSet::new)),
                        (one, same) -> one,
                        TreeMap::new));
    }

    @ParameterizedTest
    @ValueSource(strings = {"es", "de", "fr"})
    void everyWordStandsInEachLanguageWithItsParts(String language) throws IOException {
        Map<String, String> there = words("Catalogue_" + language + ".properties");
        assertEquals(parts(words("Catalogue.properties")), parts(there));
        assertEquals(parts(there).keySet(), there.keySet(), "words that no certificate prints");
    }
}
