package dev.reelproof.genealogy.balance;

import dev.reelproof.correction.CopperWire;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.PlainNumber;
import dev.reelproof.genealogy.Sample;
import dev.reelproof.genealogy.Setting;
import dev.reelproof.quantity.Length;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Finds the diameter of a lot's copper in its report: in the settings {@code gauge} or {@code diameter}, or in its samples. */
public final class CopperDiameter {
    private static final double MILLIMETRES_PER_METRE = 1000;
    private static final Pattern GAUGE = Pattern.compile("(?i)(?:awg\\s*)?(\\d{1,2})\\s*(?:awg)?");
    private static final String AWG = "awg";
    private static final List<String> OF_COPPER = List.of("conductordiameter", "copperdiameter");
    private static final String DIAMETER = "diameter";
    private static final List<String> LENGTHS = List.of("mm", "in", "m");

    private CopperDiameter() {}

    /** The diameter in mm; empty when the report does not tell it. */
    public static OptionalDouble of(Lot lot) {
        return of(lot.kind(), lot.run() == null ? Map.of() : lot.run().settings(), lot.samples());
    }

    /**
     * The diameter in mm; empty when it is not told. A plain diameter counts on bare wire alone: on insulated wire it is that over the
     * insulation.
     */
    public static OptionalDouble of(LotKind kind, Map<String, Setting> settings, Collection<Sample> samples) {
        for (Map.Entry<String, Setting> entry : settings.entrySet()) {
            String name = entry.getKey().toLowerCase(Locale.ROOT).replaceAll("[ _-]", "");
            OptionalDouble told = OptionalDouble.empty();
            if (name.equals("gauge")) {
                told = ofGauge(entry.getValue());
            } else if (OF_COPPER.contains(name) || (name.equals(DIAMETER) && kind.isBareCopper())) {
                told = millimetres(entry.getValue().value(), entry.getValue().unit());
            }
            if (told.isPresent()) {
                return told;
            }
        }
        return samples.stream()
                .filter(sample -> sample.property().equals("conductor-diameter")
                        || (sample.property().equals(DIAMETER) && kind.isBareCopper()))
                .map(sample -> millimetres(sample.value(), sample.unit()))
                .filter(OptionalDouble::isPresent)
                .mapToDouble(OptionalDouble::getAsDouble)
                .average();
    }

    private static OptionalDouble ofGauge(Setting setting) {
        if (setting.value() != null && setting.unit() != null && !setting.unit().equalsIgnoreCase(AWG)) {
            return millimetres(setting.value(), setting.unit());
        }
        Matcher gauge = GAUGE.matcher(setting.text() == null ? PlainNumber.of(setting.value()) : setting.text());
        try {
            return gauge.matches()
                    ? OptionalDouble.of(
                            CopperWire.ofGauge(Integer.parseInt(gauge.group(1))).diameterMillimetres())
                    : OptionalDouble.empty();
        } catch (IllegalArgumentException e) {
            return OptionalDouble.empty(); // a gauge that does not exist tells no diameter
        }
    }

    private static OptionalDouble millimetres(Double value, String unit) {
        return value != null && value > 0 && LENGTHS.contains(unit)
                ? OptionalDouble.of(Length.of(value, unit).metres() * MILLIMETRES_PER_METRE)
                : OptionalDouble.empty();
    }
}
