package dev.reelproof.genealogy;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A step of the process, from rod to final test, with the other words by which the trade calls it. */
public enum ProcessStep {
    ROD_RECEIPT,
    COMPOUND_RECEIPT,
    MATERIAL_RECEIPT("receiving", "receipt"),
    ROD_BREAKDOWN("breakdown"),
    DRAWING("drawing-and-annealing", "wire-drawing"),
    ANNEALING,
    INSULATING("extruding"),
    TWISTING("twinning", "pairing"),
    STRANDING,
    CABLING,
    CLOSING,
    SHIELDING("screening"),
    ARMOURING("armoring"),
    FILLING,
    JACKETING("sheathing"),
    SECOND_JACKETING,
    PRINTING("marking"),
    REWINDING("respooling"),
    CUTTING,
    FINAL_TEST;

    private static final Map<String, ProcessStep> BY_WORD = new HashMap<>();

    static {
        for (ProcessStep step : values()) {
            Stream.concat(Stream.of(step.word()), step.otherWords.stream()).forEach(word -> BY_WORD.put(word, step));
        }
    }

    private final List<String> otherWords;

    ProcessStep(String... otherWords) {
        this.otherWords = List.of(otherWords);
    }

    /** The trade's word in kebab case: {@code rod-breakdown}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The step that a word means, whatever its case, blanks as good as hyphens; empty when there is none. */
    public static Optional<ProcessStep> find(String word) {
        return Optional.ofNullable(BY_WORD.get(word.toLowerCase(Locale.ROOT).replace(' ', '-')));
    }

    /**
     * The step that a word means.
     *
     * @throws IllegalArgumentException when there is none
     */
    public static ProcessStep named(String word) {
        return find(word)
                .orElseThrow(() -> new IllegalArgumentException("unknown step '" + word + "'; known steps: "
                        + Arrays.stream(values()).map(ProcessStep::word).collect(Collectors.joining(", "))));
    }
}
