package dev.reelproof.judgement;

import dev.reelproof.limit.InstrumentUncertainty;
import dev.reelproof.limit.UncertaintyModel;
import dev.reelproof.measurement.Equipment;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.ReelResult;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;

/**
 * Source: JCGM 100:2008 (GUM), 5.1.2, law of propagation of uncertainty (from memory).
 *
 * <p>Brings the uncertainties of a model through the corrections and derivations of one result.
 *
 * <ul>
 *   <li>Equation: u² = Σ (∂c/∂x u(x))² + (∂c/∂t u(t))² + (∂c/∂L u(L))² + Σ (∂c/∂A u(A))²; of a statistic over pairs the readings
 *       count Σ |∂c/∂x| u(x) instead of the root of their squares
 *   <li>Symbols: c corrected value and u its standard uncertainty, x readings, t temperature of the cable, L length of the reel, A
 *       measured loss of a pair that a law used
 *   <li>Range: where the laws hold and the model has an entry
 *   <li>Edge cases: a model without an entry for the property and class gives none, with the reason. Of several instruments of
 *       different classes that may have measured a property, the greatest uncertainty counts
 *   <li>Known error: of first order. Readings of parts are taken as independent where they are summed as powers or subtracted,
 *       and as moving together in a statistic: the mean of 25 pairs read by one instrument is then no surer than one of them, which
 *       is on the safe side. Where a law uses a loss, its instrument is taken as independent of that of the crosstalk
 * </ul>
 */
final class Propagation {
    private static final String CITATION = "JCGM 100:2008 (GUM), 5.1.2 (from memory)";
    private static final String NO_MODEL = "no uncertainty model is in force";

    private final Optional<UncertaintyModel> model;
    private final ReelResult result;
    private final Map<Property, List<String>> classes = new EnumMap<>(Property.class);

    Propagation(Optional<UncertaintyModel> model, ReelResult result) {
        this.model = model;
        this.result = result;
    }

    /** The coverage factor of the model. A budget is known only where there is a model. */
    double coverageFactor() {
        return model.orElseThrow().coverageFactor();
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

    /** The shares in the uncertainty of one value. */
    Budget budget(Influence influence) {
        if (model.isEmpty()) {
            return Budget.without(NO_MODEL);
        }
        List<Contribution> contributions = new ArrayList<>();
        for (Influence.Instrument reading : influence.readings()) {
            Optional<String> missing = addReading(contributions, reading);
            if (missing.isPresent()) {
                return Budget.without(missing.get());
            }
        }
        return withCommon(contributions, influence);
    }

    /**
     * The shares in the uncertainty of a statistic over values.
     *
     * @param gradient derivative of the statistic by each value
     * @param influences those of the values, in the same order
     */
    Budget budget(double[] gradient, List<Influence> influences) {
        if (model.isEmpty()) {
            return Budget.without(NO_MODEL);
        }
        double together = 0;
        for (int i = 0; i < gradient.length; i++) {
            List<Contribution> ofOne = new ArrayList<>();
            for (Influence.Instrument reading : influences.get(i).readings()) {
                Optional<String> missing = addReading(ofOne, reading);
                if (missing.isPresent()) {
                    return Budget.without(missing.get());
                }
            }
            together += Math.abs(gradient[i]) * new Budget(ofOne, null).standard();
        }
        List<Contribution> contributions = new ArrayList<>();
        int count = gradient.length;
        double sum = together;
        contributions.add(new Contribution(
                () -> "instrument, the readings of " + count + " values taken as moving together: Σ |derivative| u",
                sum,
                "in the unit of the value",
                1,
                sum,
                source(model.get())));
        return withCommon(contributions, Influence.combined(gradient, influences));
    }

    private Optional<String> addReading(List<Contribution> contributions, Influence.Instrument reading) {
        UncertaintyModel used = model.orElseThrow();
        double greatest = -1;
        InstrumentUncertainty found = null;
        String ofClass = null;
        for (String equipmentClass : classesFor(reading.property())) {
            Optional<InstrumentUncertainty> entry = used.entry(equipmentClass, reading.property());
            if (entry.isEmpty()) {
                return Optional.of(used.without(equipmentClass, reading.property()));
            }
            OptionalDouble standard = entry.get().standard(reading.reading(), reading.megahertz());
            if (standard.isEmpty()) {
                return Optional.of("uncertainty model " + used.words() + ", class '" + equipmentClass
                        + "', says nothing of " + reading.property() + " at " + reading.megahertz() + " MHz");
            }
            if (standard.getAsDouble() > greatest) {
                greatest = standard.getAsDouble();
                found = entry.get();
                ofClass = equipmentClass;
            }
        }
        InstrumentUncertainty greatestEntry = Objects.requireNonNull(found, "a property has one class at least");
        String greatestClass = ofClass;
        contributions.add(new Contribution(
                () -> "instrument of class '" + greatestClass + "', " + reading.property() + " of " + reading.place()
                        + (Double.isNaN(reading.megahertz()) ? "" : " at " + reading.megahertz() + " MHz")
                        + ", reading "
                        + reading.reading() + " " + reading.property().canonicalUnit() + ": " + greatestEntry.words(),
                greatest,
                reading.property().canonicalUnit(),
                reading.derivative(),
                Math.abs(reading.derivative()) * greatest,
                greatestEntry.source().words()));
        return Optional.empty();
    }

    private Budget withCommon(List<Contribution> contributions, Influence influence) {
        UncertaintyModel used = model.orElseThrow();
        double celsius = result.temperature().celsius();
        double metres = result.length().metres();
        if (influence.perDegree() != 0) {
            contributions.add(common(
                    "temperature of the cable, " + result.temperature().words(),
                    used.temperature(),
                    celsius,
                    influence.perDegree()));
        }
        if (influence.perMetre() != 0) {
            contributions.add(
                    common("length of the reel, " + metres + " m", used.length(), metres, influence.perMetre()));
        }
        for (var loss : influence.losses().entrySet()) {
            Optional<String> missing = addReading(
                    contributions,
                    new Influence.Instrument(
                            Property.INSERTION_LOSS,
                            "pair " + loss.getKey() + ", used by the law",
                            loss.getValue().reading(),
                            loss.getValue().megahertz(),
                            loss.getValue().derivative()));
            if (missing.isPresent()) {
                return Budget.without(missing.get());
            }
        }
        return new Budget(contributions, null);
    }

    private static Contribution common(
            String what, InstrumentUncertainty uncertainty, double reading, double derivative) {
        double standard = uncertainty.standard(reading, Double.NaN).orElseThrow();
        return new Contribution(
                () -> what + ": " + uncertainty.words(),
                standard,
                uncertainty.unit(),
                derivative,
                Math.abs(derivative) * standard,
                uncertainty.source().words());
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

    private static String source(UncertaintyModel model) {
        return "uncertainty model " + model.words();
    }
}
