package dev.reelproof.app;

import dev.reelproof.certificate.CertificateType;
import dev.reelproof.certificate.Declaration;
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

        /** A picture in PNG or JPEG for their head. */
        Optional<Path> logo();

        /** What the plant declares its certificates to be. */
        @WithDefault("test-certificate")
        CertificateType certificateType();

        /** Tag of their language, such as {@code es}. */
        @WithDefault("en")
        String language();

        /** The size of their pages. */
        @WithDefault("a4")
        Declaration.Sheet sheet();

        /** The units of lengths and temperatures on them. */
        @WithDefault("both")
        Declaration.UnitSystem units();

        /** The name of who authorises them; the role belongs to it. */
        Optional<String> authorisedBy();

        /** As what that person authorises them. */
        Optional<String> authorisedAs();

        /** Whether no certificate is issued of a reel whose length marks nobody stated. */
        @WithDefault("false")
        boolean lengthMarksRequired();

        /** Whether the certificate of a reel that was tested again says what its tests came to. */
        @WithDefault("true")
        boolean retestsPrinted();
    }
}
