package dev.reelproof.genealogy;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Knows what a lot of each kind is always made from: common practice, no source. */
public final class ExpectedInputs {
    private static final Set<LotKind> BARE =
            EnumSet.of(LotKind.BREAKDOWN_WIRE, LotKind.ANNEALED_CONDUCTOR, LotKind.INSULATED_CONDUCTOR);
    private static final Set<LotKind> ELEMENTS = EnumSet.of(LotKind.TWISTED_PAIR, LotKind.UNIT, LotKind.CORE);
    private static final Set<LotKind> CABLE =
            EnumSet.of(LotKind.TWISTED_PAIR, LotKind.UNIT, LotKind.CORE, LotKind.JACKETED_CABLE, LotKind.REEL);

    /** At least one kind of each set goes in. */
    private static final Map<LotKind, List<Set<LotKind>>> EXPECTED = Map.of(
            LotKind.BREAKDOWN_WIRE, List.of(EnumSet.of(LotKind.ROD, LotKind.BREAKDOWN_WIRE)),
            LotKind.ANNEALED_CONDUCTOR, List.of(EnumSet.of(LotKind.BREAKDOWN_WIRE, LotKind.ROD)),
            LotKind.INSULATED_CONDUCTOR, List.of(BARE, EnumSet.of(LotKind.INSULATION_COMPOUND)),
            LotKind.TWISTED_PAIR, List.of(EnumSet.of(LotKind.INSULATED_CONDUCTOR)),
            LotKind.UNIT, List.of(ELEMENTS),
            LotKind.CORE, List.of(ELEMENTS),
            LotKind.JACKETED_CABLE, List.of(CABLE, EnumSet.of(LotKind.JACKET_COMPOUND)),
            LotKind.REEL, List.of(CABLE));

    private ExpectedInputs() {}

    /**
     * The kinds of input that a lot lacks.
     *
     * @param parents the kinds of its parents
     * @return the words of each set of kinds of which none is there, joined by "or"; empty when nothing is missing
     */
    public static List<String> missing(LotKind kind, Collection<LotKind> parents) {
        List<String> missing = new ArrayList<>();
        for (Set<LotKind> oneOf : EXPECTED.getOrDefault(kind, List.of())) {
            if (oneOf.stream().noneMatch(parents::contains)) {
                missing.add(
                        String.join(" or ", oneOf.stream().map(LotKind::word).toList()));
            }
        }
        return missing;
    }
}
