package dev.reelproof.app;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import io.smallrye.config.WithName;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The settings of an installation. */
@ConfigMapping(prefix = "reelproof")
public interface Settings {

    /** The data folder; the embedded database lives inside. */
    @WithDefault(".data")
    Path data();

    /** The plants that are served. */
    @WithDefault("north")
    List<String> plants();

    /** The plant that is meant where a route names none; the first when not stated. */
    Optional<String> homePlant();

    /** A folder with limit sets of one's own, beside those that the program brings; uncertainty models in {@code uncertainty/}. */
    Optional<Path> limits();

    /** The uncertainty model that is judged with, by its id. */
    @WithDefault("test-bay")
    String uncertainty();

    /** Whether the invented demo plant is loaded. */
    @WithDefault("false")
    boolean demo();

    /** Whether the demo, whose people and passwords are printed, may be reached from other machines. */
    @WithDefault("false")
    boolean demoForAnyoneOnTheNetwork();

    /** How certificates name a plant, by plant. */
    @WithName("plant")
    Map<String, Signature> signatures();

    /** The head of a plant's certificates. */
    interface Signature {

        /** The plant's name. */
        String name();

        /** The lines of its address. */
        Optional<List<String>> address();
    }
}
