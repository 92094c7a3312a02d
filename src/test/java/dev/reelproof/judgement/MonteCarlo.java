package dev.reelproof.judgement;

import dev.reelproof.limit.InstrumentUncertainty;
import dev.reelproof.limit.LevelSide;
import dev.reelproof.limit.UncertaintyModel;
import dev.reelproof.measurement.Property;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;

/**
 * Draws errors of readings, temperature, length and coefficients as an uncertainty model states them, and tells the standard deviation
 * of a figure that is computed from each draw: JCGM 101:2008, clause 7, propagation of distributions by a Monte Carlo method (from
 * memory). All errors are drawn from normal distributions.
 *
 * <p>The error of reading i is u_i (√r Z + √(1 − r) E_i), Z one for all readings of a property in a draw.
 */
final class MonteCarlo {
    /** The standard deviation of M normal draws scatters by 1/√(2 M) of itself: 0.22 %, a ninth of the 2 % that are asked for. */
    private static final int DRAWS = 100_000;

    private static final long SEED = 11;

    /** Of the standard uncertainty, or of a metre: the differences err by its square. */
    private static final double SMALL = 1e-3;

    private static final double NO_FREQUENCY = Double.NaN;

    /** A figure by its own arithmetic, from one draw. */
    @FunctionalInterface
    interface Figure {
        /**
         * The figure.
         *
         * @param readings in the order in which they were added, each of the whole reel in its canonical unit
         * @param celsius of the cable
         * @param metres of the reel
         * @param coefficients factor of all temperature coefficients, 1 but for its error
         */
        double of(double[] readings, double celsius, double metres, double coefficients);
    }

    private record Input(Property property, double reading, double standard, double correlation) {}

    private final UncertaintyModel model;
    private final double celsius;
    private final double metres;
    private final List<Input> inputs = new ArrayList<>();

    MonteCarlo(UncertaintyModel model, double celsius, double metres) {
        this.model = model;
        this.celsius = celsius;
        this.metres = metres;
    }

    /** Adds a reading that passes, with what the model says of it. */
    void add(Property property, double reading, double megahertz) {
        InstrumentUncertainty entry = entry(property);
        add(property, reading, entry, entry.standard(reading, megahertz));
    }

    void add(Property property, double reading) {
        add(property, reading, NO_FREQUENCY);
    }

    /** Adds a level that fails, with what the model says of its other side. */
    void addFailing(Property property, double reading, double megahertz) {
        InstrumentUncertainty entry = entry(property);
        LevelSide other = entry.side().orElseThrow().other();
        add(property, reading, entry, entry.standard(reading, megahertz, other));
    }

    private InstrumentUncertainty entry(Property property) {
        return model.entry(UncertaintyModel.DEFAULT_CLASS, property).orElseThrow();
    }

    private void add(Property property, double reading, InstrumentUncertainty entry, OptionalDouble standard) {
        inputs.add(new Input(property, reading, standard.orElseThrow(), entry.correlation()));
    }

    /** The figure without any error. */
    double nominal(Figure figure) {
        return figure.of(inputs.stream().mapToDouble(Input::reading).toArray(), celsius, metres, 1);
    }

    /** The standard deviation of the figure over all draws. */
    double standardDeviation(Figure figure) {
        Random random = new Random(SEED);
        double nominal = nominal(figure);
        double[] readings = new double[inputs.size()];
        double sum = 0;
        double squares = 0;
        for (int draw = 0; draw < DRAWS; draw++) {
            Map<Property, Double> common = new EnumMap<>(Property.class);
            for (int i = 0; i < readings.length; i++) {
                Input input = inputs.get(i);
                double shared = common.computeIfAbsent(input.property(), property -> random.nextGaussian());
                readings[i] = input.reading()
                        + input.standard()
                                * (Math.sqrt(input.correlation()) * shared
                                        + Math.sqrt(1 - input.correlation()) * random.nextGaussian());
            }
            double error = figure.of(
                            readings,
                            celsius + ofTemperature() * random.nextGaussian(),
                            metres + ofLength() * random.nextGaussian() + ofMarks() * random.nextGaussian(),
                            1 + ofCoefficients() * random.nextGaussian())
                    - nominal;
            sum += error;
            squares += error * error;
        }
        return Math.sqrt((squares - sum * sum / DRAWS) / (DRAWS - 1));
    }

    /**
     * The same to the first order, by differences: u² = Σ over properties of [r (Σ Δᵢ)² + (1 − r) Σ Δᵢ²] + Σ Δ² of what is common, where Δ
     * is what one standard uncertainty changes of the figure. Where it is not what was drawn, the case is none for the first order.
     */
    double firstOrder(Figure figure) {
        double[] readings = inputs.stream().mapToDouble(Input::reading).toArray();
        Map<Property, Double> sums = new EnumMap<>(Property.class);
        double squares = 0;
        for (int i = 0; i < readings.length; i++) {
            Input input = inputs.get(i);
            double[] more = readings.clone();
            double[] less = readings.clone();
            more[i] += SMALL * input.standard();
            less[i] -= SMALL * input.standard();
            double change = half(figure.of(more, celsius, metres, 1) - figure.of(less, celsius, metres, 1));
            sums.merge(input.property(), Math.sqrt(input.correlation()) * change, Double::sum);
            squares += (1 - input.correlation()) * change * change;
        }
        for (double sum : sums.values()) {
            squares += sum * sum;
        }
        double byTemperature = half(figure.of(readings, celsius + SMALL * ofTemperature(), metres, 1)
                - figure.of(readings, celsius - SMALL * ofTemperature(), metres, 1));
        double perMetre =
                half(figure.of(readings, celsius, metres + SMALL, 1) - figure.of(readings, celsius, metres - SMALL, 1));
        double byCoefficients = half(figure.of(readings, celsius, metres, 1 + SMALL * ofCoefficients())
                - figure.of(readings, celsius, metres, 1 - SMALL * ofCoefficients()));
        double byLength = perMetre * Math.hypot(ofLength(), ofMarks());
        return Math.sqrt(
                squares + byTemperature * byTemperature + byLength * byLength + byCoefficients * byCoefficients);
    }

    private static double half(double difference) {
        return difference / (2 * SMALL);
    }

    private double ofTemperature() {
        return model.temperature().standard(celsius, NO_FREQUENCY).orElseThrow();
    }

    private double ofLength() {
        return model.length().standard(metres, NO_FREQUENCY).orElseThrow();
    }

    private double ofMarks() {
        return model.lengthMarks().orElseThrow().standard(metres, NO_FREQUENCY).orElseThrow();
    }

    private double ofCoefficients() {
        return model.temperatureCoefficients().orElseThrow().standard();
    }
}
