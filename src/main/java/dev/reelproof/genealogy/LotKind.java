package dev.reelproof.genealogy;

import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/** What a lot is: wire or cable at a step of its making, or a material that goes into it. */
public enum LotKind {
    ROD,
    BREAKDOWN_WIRE,
    ANNEALED_CONDUCTOR,
    INSULATED_CONDUCTOR,
    TWISTED_PAIR,
    UNIT,
    CORE,
    JACKETED_CABLE,
    REEL,
    INSULATION_COMPOUND,
    COLOUR_CONCENTRATE,
    FILLING_COMPOUND,
    TAPE,
    SHIELD,
    JACKET_COMPOUND;

    private final String word = name().toLowerCase(Locale.ROOT).replace('_', '-');

    private static final Map<String, LotKind> BY_WORD =
            Arrays.stream(values()).collect(Collectors.toUnmodifiableMap(LotKind::word, Function.identity()));

    /**
     * The kind of that word.
     *
     * @throws IllegalArgumentException when there is none
     */
    public static LotKind named(String word) {
        LotKind kind = BY_WORD.get(word);
        if (kind == null) {
            throw new IllegalArgumentException("unknown kind of lot '" + word + "'; known kinds: "
                    + Arrays.stream(values()).map(LotKind::word).collect(Collectors.joining(", ")));
        }
        return kind;
    }

    /** Whether it is copper and nothing else: rod or bare wire. */
    public boolean isBareCopper() {
        return this == ROD || this == BREAKDOWN_WIRE || this == ANNEALED_CONDUCTOR;
    }

    /** Whether it is bought and not made of other lots. */
    public boolean isBought() {
        return switch (this) {
            case ROD, INSULATION_COMPOUND, COLOUR_CONCENTRATE, FILLING_COMPOUND, TAPE, SHIELD, JACKET_COMPOUND -> true;
            default -> false;
        };
    }

    /** The trade's word in kebab case, as in the HTTP contract: {@code insulated-conductor}. */
    public String word() {
        return word;
    }
}
