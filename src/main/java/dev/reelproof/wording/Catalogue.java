package dev.reelproof.wording;

import dev.reelproof.judgement.Message;
import dev.reelproof.judgement.Obstacle;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.MissingResourceException;
import java.util.Objects;
import java.util.ResourceBundle;
import org.jspecify.annotations.Nullable;

/**
 * The words of one language.
 *
 * <p>They are the resource bundle beside this class, and that of the obstacles beside {@link Obstacle}; the root bundles are English.
 * What a language has no words for is said in English.
 */
public final class Catalogue {
    private static final String WORDS = "dev.reelproof.wording.Catalogue";

    private final ResourceBundle words;
    private final ResourceBundle obstacles;

    private Catalogue(ResourceBundle words, ResourceBundle obstacles) {
        this.words = words;
        this.obstacles = obstacles;
    }

    /** The words of a language; never those of the machine's. */
    public static Catalogue of(Locale locale) {
        return new Catalogue(bundle(WORDS, locale), bundle(Obstacle.MESSAGES, locale));
    }

    private static ResourceBundle bundle(String name, Locale locale) {
        return ResourceBundle.getBundle(
                name,
                locale,
                Catalogue.class.getClassLoader(),
                ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
    }

    /**
     * The words under a key.
     *
     * @throws MissingResourceException when there are none
     */
    public String text(String key) {
        return words.getString(key);
    }

    /**
     * The words under a key, with their parts filled in.
     *
     * @param parts name and value by turns; a value of null is a part that is not there
     */
    public String text(String key, @Nullable String... parts) {
        Map<String, String> byName = new HashMap<>();
        for (int i = 0; i < parts.length; i += 2) {
            String value = parts[i + 1];
            if (value != null) {
                byName.put(Objects.requireNonNull(parts[i], "a part has a name"), value);
            }
        }
        return Message.fill(text(key), byName);
    }

    /** The sentence about an obstacle, with its parts as given. */
    String obstacle(Obstacle.Kind kind, Map<String, String> parts) {
        return Message.fill(obstacles.getString(kind.id()), parts);
    }
}
