package dev.reelproof.demo.plant;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/** One production length of jacketed cable, from which reels are cut, with the wires and pairs that went into it. */
final class Run {
    private static final double DIAMETER_SPREAD = 0.0012;
    private static final double SPACING_SPREAD = 0.003;
    private static final double USUAL_SWING = 0.0003;

    /** A wire of a pair of a run, and the other. */
    private record Wires(Wire a, Wire b) {}

    private final String number;
    private final CableType type;
    private final double lengthM;
    private final double drawn;
    private final List<Flaw> flaws;
    private final List<Wires> wires = new ArrayList<>();
    private final List<TwistedPair> pairs = new ArrayList<>();

    /**
     * A run.
     *
     * @param number such as 26-101; seeds what is random in it
     * @param drawn diameter of its conductors over the nominal
     */
    Run(String number, CableType type, double lengthM, double drawn, Flaw... flaws) {
        this.number = number;
        this.type = type;
        this.lengthM = lengthM;
        this.drawn = drawn;
        this.flaws = List.of(flaws);
        Random random = new Random(("run " + number).hashCode());
        Wire nominal = Wire.ofGauge(type.gauge()).drawnTo(drawn);
        for (int pair = 1; pair <= type.pairs(); pair++) {
            int p = pair;
            Flaw.DrawnThin thinning = flaw(Flaw.DrawnThin.class, flaw -> flaw.pair() == p);
            double thin = thinning == null ? 1 : thinning.factor();
            Wire a = nominal.drawnTo(1 + DIAMETER_SPREAD * random.nextGaussian());
            Wire b = nominal.drawnTo(thin * (1 + DIAMETER_SPREAD * random.nextGaussian()));
            wires.add(new Wires(a, b));
            pairs.add(new TwistedPair(
                    nominal,
                    insulatedMm() * (1 + SPACING_SPREAD * random.nextGaussian()),
                    type.permittivity(),
                    type.lossTangent(),
                    type.laysMm().get(pair - 1),
                    type.coreTakeUp()));
        }
    }

    String number() {
        return number;
    }

    CableType type() {
        return type;
    }

    double lengthM() {
        return lengthM;
    }

    /** The wire that its conductors are drawn to. */
    Wire wire() {
        return Wire.ofGauge(type.gauge()).drawnTo(drawn);
    }

    /** Diameter over the insulation in mm: the insulating line holds the capacitance, so it follows the wire's. */
    double insulatedMm() {
        return type.insulatedMm() * drawn;
    }

    TwistedPair pair(int pair) {
        return pairs.get(pair - 1);
    }

    Wire wire(int pair, String conductor) {
        Wires both = wires.get(pair - 1);
        return conductor.equals("a") ? both.a() : both.b();
    }

    /** The flaw of that kind which meets the condition, if the run has one. */
    private <F extends Flaw> @Nullable F flaw(Class<F> kind, Predicate<F> condition) {
        return flaws.stream()
                .filter(kind::isInstance)
                .map(kind::cast)
                .filter(condition)
                .findFirst()
                .orElse(null);
    }

    double swing(int pair) {
        Flaw.UnevenCapstan flaw = flaw(Flaw.UnevenCapstan.class, f -> f.pair() == pair);
        return flaw == null ? USUAL_SWING : flaw.swing();
    }

    double periodM(int pair, double usual) {
        Flaw.UnevenCapstan flaw = flaw(Flaw.UnevenCapstan.class, f -> f.pair() == pair);
        return flaw == null ? usual : flaw.periodM();
    }

    private Flaw.@Nullable AlikeLays alike(int pair, int partner) {
        return flaw(
                Flaw.AlikeLays.class,
                f -> f.pair() == pair && f.partner() == partner || f.pair() == partner && f.partner() == pair);
    }

    /** By how much two pairs couple more than usual at the near end. */
    double nearAlikeness(int pair, int partner) {
        Flaw.AlikeLays flaw = alike(pair, partner);
        return flaw == null ? 1 : flaw.near();
    }

    /** By how much two pairs couple more than usual at the far end. */
    double farAlikeness(int pair, int partner) {
        Flaw.AlikeLays flaw = alike(pair, partner);
        return flaw == null ? 1 : flaw.far();
    }

    /** Capacitance unbalance to ground in pF/km: the flaw's when the pair has one. */
    double groundUnbalance(int pair, double usual) {
        Flaw.OffCentre flaw = flaw(Flaw.OffCentre.class, f -> f.pair() == pair);
        return flaw == null ? usual : flaw.picofaradPerKm();
    }
}
