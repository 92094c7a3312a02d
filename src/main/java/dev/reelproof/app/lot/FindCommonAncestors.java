package dev.reelproof.app.lot;

import dev.reelproof.app.Plants;
import dev.reelproof.genealogy.CommonAncestor;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.intake.Faults;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.store.lot.CommonAncestors;
import dev.reelproof.store.lot.Lots;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Finds the lots from which several reels descend. */
@ApplicationScoped
public class FindCommonAncestors {
    private static final int MOST_REELS = 5_000;

    private final CommonAncestors ancestors;
    private final Lots lots;
    private final Plants plants;

    FindCommonAncestors(CommonAncestors ancestors, Lots lots, Plants plants) {
        this.ancestors = ancestors;
        this.lots = lots;
        this.plants = plants;
    }

    /**
     * What several reels have in common.
     *
     * @param asked how many reels were asked for, each once
     * @param known how many of them are registered
     * @param unknown those that are not
     * @param ancestors those that at least two of the reels share, shared by most first; all of them when one reel is known
     */
    public record Found(int asked, int known, List<LotId> unknown, List<CommonAncestor> ancestors) {}

    /**
     * Finds them.
     *
     * @param reels their numbers
     * @param where the place of the numbers, for the refusal
     * @param plantNamed the plant; the caller's when none is named
     * @throws IntakeException when a number is none, there are none or too many, or the answer would take too long
     */
    public Found find(List<String> reels, String where, @Nullable String plantNamed) {
        String plant = plants.named(plantNamed, "plant");
        Faults faults = new Faults();
        Set<LotId> asked = new LinkedHashSet<>();
        for (String name : reels) {
            faults.attempt(where, () -> new LotId(name.strip())).ifPresent(asked::add);
        }
        faults.refuseIfAny();
        if (!(asked.size() >= 1 && asked.size() <= MOST_REELS)) {
            throw IntakeException.of(
                    IntakeException.Kind.CONTENT,
                    where,
                    "name 1 to " + MOST_REELS + " reels, such as reels=R-1,R-2, not " + asked.size());
        }
        List<LotId> unknown = lots.unknown(plant, asked);
        List<LotId> known = new ArrayList<>(asked);
        known.removeAll(unknown);
        List<CommonAncestor> common =
                known.isEmpty() ? List.of() : LotFinder.inReason("query", () -> ancestors.of(plant, known));
        return new Found(
                asked.size(),
                known.size(),
                unknown,
                common.stream()
                        .filter(one ->
                                known.size() > 1 || !known.contains(one.lot().id()))
                        .toList());
    }
}
