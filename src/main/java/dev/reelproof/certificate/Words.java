package dev.reelproof.certificate;

import dev.reelproof.judgement.Figure;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.limit.DecisionRule;
import dev.reelproof.limit.RoundingRule;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Site;
import dev.reelproof.measurement.Subject;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.stream.Collectors;

/** The trade's words, plain words and figures as a certificate prints them. */
final class Words {
    private static final int SIGNIFICANT_DIGITS = 4;
    private static final int DIGITS_OF_UNCERTAINTY = 2;
    private static final double NEARLY_SURE = 0.999;
    private static final double PERCENT = 100;
    private static final double KILOHERTZ_PER_MEGAHERTZ = 1000;

    private Words() {}

    /** The trade's name of a property. */
    static String title(Property property) {
        return switch (property) {
            case CONDUCTOR_RESISTANCE -> "Conductor resistance";
            case RESISTANCE_UNBALANCE -> "Resistance unbalance";
            case RESISTANCE_UNBALANCE_BETWEEN_PAIRS -> "Resistance unbalance between pairs";
            case MUTUAL_CAPACITANCE -> "Mutual capacitance";
            case CAPACITANCE_UNBALANCE_PAIR_TO_PAIR -> "Capacitance unbalance, pair to pair";
            case CAPACITANCE_UNBALANCE_TO_GROUND -> "Capacitance unbalance, pair to ground";
            case INSERTION_LOSS -> "Insertion loss";
            case NEXT -> "NEXT";
            case PS_NEXT -> "PS NEXT";
            case ACR_F -> "ACR-F";
            case PS_ACR_F -> "PS ACR-F";
            case FEXT -> "FEXT";
            case RETURN_LOSS -> "Return loss";
            case TCL -> "TCL";
            case EL_TCTL -> "EL TCTL";
            case PROPAGATION_DELAY -> "Propagation delay";
            case DELAY_SKEW -> "Delay skew";
            case INSULATION_RESISTANCE -> "Insulation resistance";
            case DIELECTRIC_WITHSTAND -> "Dielectric withstand";
            case SPARK_FAULTS -> "Spark faults";
            case CONDUCTOR_ELONGATION -> "Conductor elongation";
            case INSULATION_TENSILE_STRENGTH -> "Insulation tensile strength";
            case INSULATION_ELONGATION -> "Insulation elongation";
            case INSULATION_COMPRESSION -> "Insulation compression";
            case STRIP_FORCE -> "Strip force";
            case JACKET_THICKNESS -> "Jacket thickness";
            case JACKET_TENSILE_STRENGTH -> "Jacket tensile strength";
            case JACKET_ELONGATION -> "Jacket elongation";
            case OVERALL_DIAMETER -> "Overall diameter";
        };
    }

    /** The property in plain words. */
    static String plain(Property property) {
        return switch (property) {
            case CONDUCTOR_RESISTANCE -> "direct-current resistance of each wire";
            case RESISTANCE_UNBALANCE -> "difference between the two wires of a pair";
            case RESISTANCE_UNBALANCE_BETWEEN_PAIRS -> "difference between two pairs";
            case MUTUAL_CAPACITANCE -> "capacitance between the wires of a pair";
            case CAPACITANCE_UNBALANCE_PAIR_TO_PAIR -> "how unevenly one pair couples to another";
            case CAPACITANCE_UNBALANCE_TO_GROUND -> "how unevenly a pair's wires couple to ground";
            case INSERTION_LOSS -> "signal lost along the cable";
            case NEXT -> "crosstalk heard at the sending end";
            case PS_NEXT -> "the same, from all other pairs together";
            case ACR_F -> "crosstalk at the far end against the signal";
            case PS_ACR_F -> "the same, from all other pairs together";
            case FEXT -> "crosstalk heard at the far end";
            case RETURN_LOSS -> "how little is reflected to the sender";
            case TCL -> "how well a pair is balanced, sending end";
            case EL_TCTL -> "how well a pair is balanced, far end";
            case PROPAGATION_DELAY -> "time a signal takes along the cable";
            case DELAY_SKEW -> "difference between fastest and slowest pair";
            case INSULATION_RESISTANCE -> "resistance from a wire to all else";
            case DIELECTRIC_WITHSTAND -> "breakdowns under high voltage";
            case SPARK_FAULTS -> "insulation faults found while running";
            case CONDUCTOR_ELONGATION -> "stretch of the wire at break";
            case INSULATION_TENSILE_STRENGTH -> "stress at which the insulation breaks";
            case INSULATION_ELONGATION -> "stretch of the insulation at break";
            case INSULATION_COMPRESSION -> "load under which the insulation gives way";
            case STRIP_FORCE -> "force to pull the insulation off";
            case JACKET_THICKNESS -> "wall of the jacket";
            case JACKET_TENSILE_STRENGTH -> "stress at which the jacket breaks";
            case JACKET_ELONGATION -> "stretch of the jacket at break";
            case OVERALL_DIAMETER -> "diameter over the jacket";
        };
    }

    /** Where a figure was found: pair, combination or conductor, end, frequency. */
    static String where(Property property, Figure figure) {
        String place = where(property, figure.subject());
        return figure.megahertz() == null ? place : place + ", " + frequency(figure.megahertz());
    }

    /** A pair, combination or conductor with its end and sample. */
    static String where(Property property, Subject subject) {
        StringBuilder words = new StringBuilder(place(property, subject));
        if (subject.end() != null) {
            words.append(", ").append(subject.end().word()).append(" end");
        }
        if (subject.sample() != null) {
            words.append(", sample ").append(subject.sample());
        }
        return words.toString();
    }

    private static String place(Property property, Subject subject) {
        if (subject.pair() == null) {
            return "reel";
        }
        if (subject.partner() != null) {
            return subject.site(property) == Site.ORDERED_COMBINATION
                    ? "pair " + subject.pair() + " from " + subject.partner()
                    : "pairs " + subject.pair() + " and " + subject.partner();
        }
        return "pair " + subject.pair()
                + (subject.conductor() == null
                        ? ""
                        : ", wire " + subject.conductor().letter());
    }

    /** The name of a line in a plot: {@code 1}, {@code 1-2}, {@code 1 from 2}; empty for the reel. */
    static String label(Property property, Subject subject) {
        if (subject.pair() == null) {
            return "";
        }
        if (subject.partner() == null) {
            return subject.pair().toString();
        }
        return subject.pair()
                + (subject.site(property) == Site.ORDERED_COMBINATION ? " from " : "-")
                + subject.partner();
    }

    /** A frequency with its unit: kHz below 1 MHz; four significant digits. */
    static String frequency(double megahertz) {
        return megahertz < 1
                ? significant(megahertz * KILOHERTZ_PER_MEGAHERTZ) + " kHz"
                : significant(megahertz) + " MHz";
    }

    /** A range of frequencies, the unit once where both ends share it. */
    static String range(double from, double to) {
        return from >= 1 ? significant(from) + " to " + frequency(to) : frequency(from) + " to " + frequency(to);
    }

    /** A number to four significant digits, ties to the even digit, trailing zeros left out. */
    static String significant(double value) {
        BigDecimal rounded = BigDecimal.valueOf(value)
                .round(new MathContext(SIGNIFICANT_DIGITS, RoundingMode.HALF_EVEN))
                .stripTrailingZeros();
        return minus((rounded.scale() < 0 ? rounded.setScale(0) : rounded).toPlainString());
    }

    /** A number to so many decimal places, ties to the even digit. */
    static String fixed(double value, int places) {
        return minus(BigDecimal.valueOf(value)
                .setScale(places, RoundingMode.HALF_EVEN)
                .toPlainString());
    }

    /**
     * An uncertainty to two significant digits, rounded up.
     *
     * <p>Source: JCGM 100:2008 (GUM), 7.2.6, two digits at most and rounding up where it is fitting (from memory).
     */
    private static String uncertainty(double expanded) {
        BigDecimal rounded = BigDecimal.valueOf(expanded)
                .round(new MathContext(DIGITS_OF_UNCERTAINTY, RoundingMode.UP))
                .stripTrailingZeros();
        return (rounded.scale() < 0 ? rounded.setScale(0) : rounded).toPlainString();
    }

    /** How sure a figure is. */
    static String uncertainty(Figure figure) {
        return "U = " + uncertainty(figure.uncertainty().expanded()) + " " + figure.unit()
                + ", probability of conformity "
                + probability(figure.uncertainty().probabilityOfConformity());
    }

    /** In percent with one place; never printed as certain. */
    static String probability(double probability) {
        if (probability > NEARLY_SURE) {
            return "above 99.9 %";
        }
        return probability < 1 - NEARLY_SURE ? "below 0.1 %" : fixed(PERCENT * probability, 1) + " %";
    }

    /** What the uncertainties of a judgement are; null when it has none. */
    static String uncertainty(Judgement judgement) {
        return judgement.findings().stream()
                .map(Finding::figure)
                .filter(figure -> figure != null && figure.uncertainty() != null)
                .findFirst()
                .filter(figure -> judgement.uncertaintyModel() != null)
                .map(figure ->
                        "U: expanded uncertainty of the worst value at reference conditions, coverage factor k = "
                                + significant(figure.uncertainty().coverageFactor())
                                + ", normal distribution supposed; uncertainty model "
                                + judgement.uncertaintyModel().id() + " revision "
                                + judgement.uncertaintyModel().revision() + ", SHA-256 "
                                + judgement.uncertaintyModel().sha256() + ".")
                .orElse(null);
    }

    private static String minus(String number) {
        return number.replace('-', '−');
    }

    /** The rounding rule, in words. */
    static String rounding(RoundingRule rule) {
        return switch (rule) {
            case ABSOLUTE -> "values are compared as they are, not rounded";
            case TO_THE_PLACES_OF_THE_LIMIT -> "values are rounded to the places of the printed limit, a tie to the even"
                    + " digit, and then compared";
        };
    }

    /** The decision rules of a judgement, in words. */
    static String decisionRule(Judgement judgement) {
        return judgement.findings().stream()
                .map(finding -> decisionRule(finding.decisionRule()))
                .distinct()
                .collect(Collectors.joining(" "));
    }

    private static String decisionRule(DecisionRule rule) {
        String words = "Decision rule: " + rule.words() + " (ILAC-G8:09/2019, " + rule.clause() + "). ";
        return words
                + switch (rule.form()) {
                    case SIMPLE_ACCEPTANCE -> "A value on its limit"
                            + " passes; measurement uncertainty is neither added to nor taken from the limit, so that for a value"
                            + " close to its limit the chance of a wrong acceptance may reach 50 %.";
                    case GUARD_BAND_TWO -> "A value passes when its margin is at least the guard band; U is the expanded"
                            + " uncertainty of the value.";
                    case GUARD_BAND_FOUR -> "A value passes when its margin is at least the guard band, and passes"
                            + " conditionally when it meets its limit by less; U is the expanded uncertainty of the value.";
                };
    }
}
