package dev.reelproof.judgement;

import dev.reelproof.limit.InstrumentUncertainty;
import dev.reelproof.limit.RelativeUncertainty;
import dev.reelproof.limit.UncertaintyModel;
import dev.reelproof.measurement.Equipment;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.ReelResult;
import dev.reelproof.quantity.FrequencyGrid;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * Source: JCGM 100:2008 (GUM), 5.1.2 and 5.2.2, law of propagation of uncertainty with correlated input quantities (from memory).
 *
 * <p>Brings the uncertainties of a model through the corrections, derivations and statistics of one result.
 *
 * <ul>
 *   <li>Equation: u² = Σ over the properties read [r (Σ g u(x))² + (1 − r) Σ (g u(x))²] + (∂c/∂t u(t))² + (∂c/∂L)² [u(L)² + u(m)²] +
 *       (∂c/∂ln α u(α))²
 *   <li>Symbols: c corrected value, derived value or statistic, and u its standard uncertainty; x readings, g the derivative by one and
 *       r the correlation between the readings of a property; t temperature of the cable, L length of the reel, m the marks that it is
 *       read from, α temperature coefficients of the laws. A measured loss that a law used is a reading of insertion loss
 *   <li>Range: where the laws hold and the model has an entry
 *   <li>Edge cases: a model without an entry for the property and class gives none, with the reason. Of several instruments of
 *       different classes that may have measured a property, the greatest uncertainty counts
 *   <li>Known error: of first order. Errors of different properties are taken as independent, even where one instrument read both
 * </ul>
 */
final class Propagation {
    private static final String CITATION = "JCGM 100:2008 (GUM), 5.1.2 and 5.2.2 (from memory)";
    private static final String NO_MODEL = "no uncertainty model is in force";

    private final Optional<UncertaintyModel> model;
    private final ReelResult result;
    private final double ofTemperature;
    private final double ofLength;
    private final double ofLengthMarks;
    private final double ofLengthAndMarks;
    private final double ofCoefficients;
    private final Map<Property, List<String>> classes = new EnumMap<>(Property.class);
    private final Map<Property, Map<Optional<FrequencyGrid>, Optional<Instruments>>> onGrids =
            new EnumMap<>(Property.class);

    Propagation(Optional<UncertaintyModel> model, ReelResult result) {
        this.model = model;
        this.result = result;
        double metres = result.length().metres();
        this.ofTemperature = model.map(UncertaintyModel::temperature)
                .map(entry -> standard(entry, result.temperature().celsius()))
                .orElse(0.0);
        this.ofLength = model.map(UncertaintyModel::length)
                .map(entry -> standard(entry, metres))
                .orElse(0.0);
        this.ofLengthMarks = model.flatMap(UncertaintyModel::lengthMarks)
                .map(entry -> standard(entry, metres))
                .orElse(0.0);
        this.ofLengthAndMarks = Math.hypot(ofLength, ofLengthMarks);
        this.ofCoefficients = model.flatMap(UncertaintyModel::temperatureCoefficients)
                .map(RelativeUncertainty::standard)
                .orElse(0.0);
    }

    private static double standard(InstrumentUncertainty entry, double reading) {
        return entry.standard(reading, Double.NaN).orElseThrow();
    }

    /** Whether there is a model at all. */
    boolean isKnown() {
        return model.isPresent();
    }

    /** The coverage factor of the model. A budget is known only where there is a model. */
    double coverageFactor() {
        return model.orElseThrow().coverageFactor();
    }

    /** What the error of the cable's temperature, one standard uncertainty of it, does to a value. */
    double byTemperature(Dependence value, double reading) {
        return value.slopes().perDegree(reading) * ofTemperature;
    }

    /** What the error of the reel's length, that of its marks included, does to a value. */
    double byLength(Dependence value, double reading) {
        return value.perMetre(reading) * ofLengthAndMarks;
    }

    /** What the error of the laws' temperature coefficients does to a value. */
    double byCoefficients(Dependence value, double reading) {
        return value.slopes().perCoefficient(reading) * ofCoefficients;
    }

    /** The sum of the squares of the three. */
    double squaresOfCommon(Dependence value, double reading) {
        double temperature = byTemperature(value, reading);
        double length = byLength(value, reading);
        double coefficients = byCoefficients(value, reading);
        return temperature * temperature + length * length + coefficients * coefficients;
    }

    /**
     * The instruments that may have read a property; asked only where there is a model.
     *
     * @param grid the frequencies; absent for single values
     */
    Optional<Instruments> instruments(Property property, @Nullable FrequencyGrid grid) {
        return onGrids.computeIfAbsent(property, key -> new HashMap<>())
                .computeIfAbsent(
                        Optional.ofNullable(grid),
                        key -> without(property).isPresent()
                                ? Optional.empty()
                                : Optional.of(on(property, grid == null ? new double[] {Double.NaN} : grid.toArray())));
    }

    private Instruments on(Property property, double[] megahertz) {
        List<String> ofClasses = classesFor(property);
        return new Instruments(
                ofClasses,
                ofClasses.stream()
                        .map(one -> model.orElseThrow().entry(one, property).orElseThrow())
                        .toList(),
                megahertz);
    }

    /** Why the model has nothing for a property, in words; empty where it has. */
    private Optional<String> without(Property property) {
        UncertaintyModel used = model.orElseThrow();
        return classesFor(property).stream()
                .filter(one -> used.entry(one, property).isEmpty())
                .findFirst()
                .map(one -> used.without(one, property));
    }

    /** The step that closes a budget. */
    Step expanded(Budget budget, String unit) {
        UncertaintyModel used = model.orElseThrow();
        return new Step(
                "expanded uncertainty",
                "U = k √Σ contribution², k = " + used.coverageFactor() + " for a level of confidence of about "
                        + used.confidencePercent() + " %; uncertainty model " + used.words() + ", " + used.title(),
                used.coverageFactor() * budget.standard(),
                unit,
                CITATION);
    }

    /** The shares in the uncertainty of a value, derived value or statistic. */
    Budget budget(Influence influence, ErrorSide side) {
        if (model.isEmpty()) {
            return Budget.without(NO_MODEL);
        }
        Map<Property, List<ReadingShare>> shares = new EnumMap<>(Property.class);
        for (Influence.Instrument reading : influence.readings()) {
            Optional<String> without = without(reading.property());
            if (without.isPresent()) {
                return Budget.without(without.get());
            }
            ReadingShare share = share(reading, side);
            if (Double.isNaN(share.standard())) {
                return Budget.without("uncertainty model " + model.get().words() + ", class '" + share.equipmentClass()
                        + "', says nothing of " + reading.property()
                        + (Double.isNaN(reading.megahertz())
                                ? " of " + reading.reading() + " "
                                        + reading.property().canonicalUnit()
                                : " at " + reading.megahertz() + " MHz"));
            }
            shares.computeIfAbsent(reading.property(), key -> new ArrayList<>()).add(share);
        }
        List<Contribution> contributions = new ArrayList<>();
        shares.values().forEach(ofOne -> contributions.addAll(ReadingShare.contributions(ofOne)));
        contributions.addAll(common(influence));
        return new Budget(contributions, null);
    }

    private ReadingShare share(Influence.Instrument reading, ErrorSide side) {
        Instruments instruments = on(reading.property(), new double[] {reading.megahertz()});
        int which = instruments.which(reading.reading(), 0, side);
        return new ReadingShare(
                reading,
                instruments.equipmentClass(which),
                instruments.entry(which),
                instruments.standard(which, reading.reading(), 0, side));
    }

    /** What is one quantity for the whole result: temperature, length with its marks, and the laws' coefficients. */
    private List<Contribution> common(Influence influence) {
        UncertaintyModel used = model.orElseThrow();
        double metres = result.length().metres();
        List<Contribution> contributions = new ArrayList<>();
        if (influence.perDegree() != 0) {
            contributions.add(of(
                    "temperature of the cable, " + result.temperature().words(),
                    used.temperature(),
                    ofTemperature,
                    influence.perDegree()));
        }
        if (influence.perMetre() != 0) {
            contributions.add(
                    of("length of the reel, " + metres + " m", used.length(), ofLength, influence.perMetre()));
            used.lengthMarks()
                    .ifPresent(marks -> contributions.add(
                            of("marks that the length is read from", marks, ofLengthMarks, influence.perMetre())));
        }
        if (influence.perCoefficient() != 0) {
            used.temperatureCoefficients()
                    .ifPresent(coefficients -> contributions.add(Contribution.of(
                            () -> "temperature coefficients of the laws: " + coefficients.words(),
                            ofCoefficients,
                            "as a ratio",
                            influence.perCoefficient(),
                            coefficients.source().words())));
        }
        return contributions;
    }

    private static Contribution of(String what, InstrumentUncertainty entry, double standard, double derivative) {
        return Contribution.of(
                () -> what + ": " + entry.words(),
                standard,
                entry.unit(),
                derivative,
                entry.source().words());
    }

    /** The classes of the instruments that name a property; where none does, of those that name no property at all. */
    private List<String> classesFor(Property property) {
        return classes.computeIfAbsent(property, key -> {
            TreeSet<String> naming = new TreeSet<>();
            TreeSet<String> any = new TreeSet<>();
            for (Equipment equipment : result.equipment()) {
                String equipmentClass = equipment.equipmentClass() == null
                        ? UncertaintyModel.DEFAULT_CLASS
                        : equipment.equipmentClass();
                if (equipment.properties().contains(key)) {
                    naming.add(equipmentClass);
                } else if (equipment.properties().isEmpty()) {
                    any.add(equipmentClass);
                }
            }
            TreeSet<String> found = naming.isEmpty() ? any : naming;
            return found.isEmpty() ? List.of(UncertaintyModel.DEFAULT_CLASS) : List.copyOf(found);
        });
    }
}
