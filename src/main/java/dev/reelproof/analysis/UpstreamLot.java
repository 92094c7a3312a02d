package dev.reelproof.analysis;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.Setting;
import java.util.EnumSet;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * What is known of a lot that went into reels, or of a reel itself.
 *
 * @param id its identifier
 * @param kind what it is
 * @param quantity how much of it there was
 * @param step the step that made it; null when not said, as all that follows but the settings
 * @param machine the machine
 * @param run the run of the step
 * @param line the line that the machine stands in
 * @param operator the operator's code
 * @param shift the shift
 * @param settings what the machine was set to, by name; empty when not said
 */
public record UpstreamLot(
        String id,
        LotKind kind,
        Amount quantity,
        @Nullable String step,
        @Nullable String machine,
        @Nullable String run,
        @Nullable String line,
        @Nullable String operator,
        @Nullable String shift,
        Map<String, Setting> settings) {
    /** What is bought and not made from wire. */
    private static final Set<LotKind> MATERIALS = EnumSet.of(
            LotKind.ROD,
            LotKind.INSULATION_COMPOUND,
            LotKind.COLOUR_CONCENTRATE,
            LotKind.FILLING_COMPOUND,
            LotKind.TAPE,
            LotKind.SHIELD,
            LotKind.JACKET_COMPOUND);

    /** The name of a setting that tells the die or the set of dies. */
    private static final String DIE = "(?i)die([ _-]?set)?";

    public UpstreamLot {
        if (id == null || id.isBlank()) {
            throw new IllegalArgumentException("a lot needs its identifier");
        }
        Objects.requireNonNull(quantity, "a lot has a quantity");
        settings = Map.copyOf(settings);
    }

    /** What a reel met that was made from this lot, or that is this lot; without the lot itself. */
    Set<Exposure> exposures() {
        Set<Exposure> exposures = new TreeSet<>();
        add(exposures, Factor.STEP, step);
        add(exposures, Factor.MACHINE, machine);
        // A run is named after its only output unless somebody names it: such a name tells nothing beyond the lot.
        add(exposures, Factor.STEP_RUN, id.equals(run) ? null : run);
        add(exposures, Factor.LINE, line);
        add(exposures, Factor.OPERATOR, operator);
        add(exposures, Factor.SHIFT, shift);
        if (MATERIALS.contains(kind)) {
            exposures.add(new Exposure(Factor.MATERIAL, kind.word()));
        }
        settings.forEach((name, setting) -> {
            if (name.matches(DIE)) {
                add(exposures, Factor.DIE, setting.toString());
            } else if (setting.text() != null && !setting.text().isBlank()) {
                exposures.add(new Exposure(Factor.SETTING, name + ": " + setting.text()));
            }
        });
        return exposures;
    }

    private static void add(Set<Exposure> exposures, Factor factor, @Nullable String value) {
        if (value != null && !value.isBlank()) {
            exposures.add(new Exposure(factor, value));
        }
    }

    /** The exposure to the lot itself. */
    Exposure asExposure() {
        return new Exposure(Factor.LOT, id);
    }
}
