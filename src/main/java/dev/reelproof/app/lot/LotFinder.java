package dev.reelproof.app.lot;

import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.store.SearchTooLargeException;
import jakarta.inject.Singleton;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Finds the lot or reel that somebody names, or refuses with the reason. */
@Singleton
class LotFinder {
    private final Plants plants;

    LotFinder(Plants plants) {
        this.plants = plants;
    }

    /**
     * What a search by plant and identifier finds.
     *
     * @param what what is looked for, {@code lot} or {@code reel}
     * @param name its identifier as it was named
     * @param plantNamed the plant; the caller's when none is named
     * @throws NothingThereException when there is nothing
     * @throws IntakeException when the plant is not served here, or the answer would be too large
     */
    <T> T find(String what, String name, @Nullable String plantNamed, BiFunction<String, LotId, Optional<T>> search) {
        String plant = plants.named(plantNamed, "plant");
        return inReason(what, () -> LotId.named(name).flatMap(id -> search.apply(plant, id)))
                .orElseThrow(() -> new NothingThereException(
                        "The " + what + " '" + name + "' is not registered at plant " + plant + "."));
    }

    /**
     * What is found in the time that one answer may take.
     *
     * @param where what asked for too much, for the refusal
     * @throws IntakeException when it takes longer
     */
    static <T> T inReason(String where, Supplier<T> search) {
        try {
            return search.get();
        } catch (SearchTooLargeException e) {
            throw IntakeException.of(IntakeException.Kind.CONTENT, where, e);
        }
    }
}
