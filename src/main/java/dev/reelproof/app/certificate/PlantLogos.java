package dev.reelproof.app.certificate;

import dev.reelproof.app.Settings;
import dev.reelproof.pdf.Logo;
import io.quarkus.runtime.Startup;
import jakarta.inject.Singleton;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** The signs of the plants, read at the start: a file that is no picture is found then, not with the first certificate. */
@Startup
@Singleton
public class PlantLogos {
    private final Map<String, Logo> logos = new HashMap<>();

    PlantLogos(Settings settings) {
        settings.signatures()
                .forEach((plant, signature) -> signature.logo().ifPresent(file -> logos.put(plant, logo(plant, file))));
    }

    private static Logo logo(String plant, Path file) {
        try {
            return Logo.of(Files.readAllBytes(file));
        } catch (IOException | IllegalArgumentException e) {
            throw new IllegalStateException(
                    "reelproof.plant." + plant + ".logo, " + file + ", is no sign for certificates: " + e.getMessage(),
                    e);
        }
    }

    /** The sign of a plant; empty when it has none. */
    public Optional<Logo> of(String plant) {
        return Optional.ofNullable(logos.get(plant));
    }
}
