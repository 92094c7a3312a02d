package dev.reelproof.api.lot;

import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.store.SearchTooLargeException;
import jakarta.inject.Singleton;
import java.util.Optional;
import java.util.function.BiFunction;

/** Finds what an address names, or refuses with the reason. */
@Singleton
public class LotFinder {
    private final Plants plants;

    LotFinder(Plants plants) {
        this.plants = plants;
    }

    /**
     * What a search by plant and identifier finds.
     *
     * @param what what is looked for, {@code lot} or {@code reel}
     * @param name its identifier, as it stands in the address
     * @param plantNamed the plant; null for the home plant
     * @throws NothingThereException when there is nothing
     * @throws IntakeException when the plant is not served here, or the answer would be too large
     */
    public <T> T find(String what, String name, String plantNamed, BiFunction<String, LotId, Optional<T>> search) {
        String plant = plants.named(plantNamed, "plant");
        try {
            return identifier(name)
                    .flatMap(id -> search.apply(plant, id))
                    .orElseThrow(() -> new NothingThereException(
                            "The " + what + " '" + name + "' is not registered at plant " + plant + "."));
        } catch (SearchTooLargeException e) {
            throw IntakeException.of(IntakeException.Kind.CONTENT, what, e.getMessage());
        }
    }

    /** The identifier; nothing when no lot can have it. */
    public static Optional<LotId> identifier(String name) {
        try {
            return Optional.of(new LotId(name));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }
}
