package dev.reelproof.app;

import dev.reelproof.access.Action;
import dev.reelproof.access.Caller;
import dev.reelproof.access.Callers;
import dev.reelproof.certificate.CertificateNumber;
import dev.reelproof.certificate.Declaration;
import dev.reelproof.certificate.Plant;
import dev.reelproof.intake.Identifier;
import dev.reelproof.intake.IntakeException;
import jakarta.inject.Singleton;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** The plants that this installation serves. */
@Singleton
public class Plants {
    private static final int ANY_YEAR = 2026;
    private static final int ANY_SERIAL = 1;
    private static final List<String> LANGUAGES = List.of("en", "es", "de", "fr");
    private static final Plant DEMO_PLANT =
            new Plant("Demo Cable Works (invented)", List.of("1 Invented Street", "Nowhere"));

    private final Settings settings;
    private final Callers callers;
    private final String home;

    Plants(Settings settings, Callers callers) {
        this.settings = settings;
        this.callers = callers;
        for (String plant : settings.plants()) {
            Identifier.of(plant);
            CertificateNumber.of(plant, ANY_YEAR, ANY_SERIAL);
        }
        settings.signatures().forEach(Plants::declaration);
        this.home = settings.homePlant().orElse(settings.plants().get(0));
        if (!settings.plants().contains(home)) {
            throw new IllegalStateException("reelproof.home-plant is " + home
                    + ", which is not one of reelproof.plants: " + String.join(", ", settings.plants()));
        }
    }

    /** The plants, as the configuration lists them. */
    public List<String> served() {
        return settings.plants();
    }

    /** The plant that is meant where none is named. */
    public String home() {
        return home;
    }

    /**
     * The plant named, where the current caller may act; the caller's own plant or the home plant when none is named.
     *
     * @param where the place of the name, for the refusal
     * @throws IntakeException when it is not served here
     * @throws dev.reelproof.access.PermissionDeniedException when the caller belongs to another plant
     */
    public String named(@Nullable String plant, String where) {
        Caller caller = callers.current();
        String meant = plant != null ? plant : caller.plant() != null ? caller.plant() : home;
        if (!settings.plants().contains(meant)) {
            throw IntakeException.of(
                    IntakeException.Kind.CONTENT,
                    where,
                    "unknown plant '" + meant + "'; this installation serves " + String.join(", ", settings.plants()));
        }
        caller.requirePlant(meant);
        return meant;
    }

    /**
     * As {@link #named}, for a change that not every role may make.
     *
     * @throws dev.reelproof.access.PermissionDeniedException when the caller's roles do not allow it, or it belongs to another plant
     */
    public String forAction(Action action, @Nullable String plant, String where) {
        callers.current().require(action);
        return named(plant, where);
    }

    /** How certificates name a plant: as configured, else in the demo as the invented plant, else by its identifier. */
    public Plant signature(String plant) {
        Settings.Signature signature = settings.signatures().get(plant);
        if (signature != null) {
            return new Plant(signature.name(), signature.address().orElse(List.of()));
        }
        return settings.demo() ? DEMO_PLANT : new Plant(plant, List.of());
    }

    /** What a plant declares its certificates to be: as configured, else of its own kind. */
    public Declaration declaration(String plant) {
        Settings.Signature signature = settings.signatures().get(plant);
        return signature == null ? Declaration.PLAIN : declaration(plant, signature);
    }

    /** Whether the certificate of a reel that was tested again says what its tests came to; where nobody chose, it does. */
    public boolean printsRetests(String plant) {
        Settings.Signature signature = settings.signatures().get(plant);
        return signature == null || signature.retestsPrinted();
    }

    private static Declaration declaration(String plant, Settings.Signature signature) {
        if (signature.authorisedBy().isPresent() != signature.authorisedAs().isPresent()) {
            throw new IllegalStateException("reelproof.plant." + plant
                    + " names who authorises certificates without the role, or the role without the name");
        }
        Locale language = Locale.forLanguageTag(signature.language());
        if (!LANGUAGES.contains(language.toLanguageTag())) {
            throw new IllegalStateException("reelproof.plant." + plant + ".language is '" + signature.language()
                    + "'; certificates are printed in " + String.join(", ", LANGUAGES));
        }
        return new Declaration(
                signature.certificateType(),
                language,
                signature.sheet(),
                signature.units(),
                signature
                        .authorisedBy()
                        .map(name -> new Declaration.Signatory(
                                name, signature.authorisedAs().orElseThrow()))
                        .orElse(null),
                signature.lengthMarksRequired());
    }
}
