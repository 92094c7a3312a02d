package dev.reelproof.network;

import dev.reelproof.measurement.End;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Tells conductors from what cannot be conductors. Source: the modes of a pair of coupled conductors, textbook (from memory); the
 * tolerances are common practice, no source.
 *
 * <ul>
 *   <li>Equation: at one end Sab = (Γc − Γd)/2: what passes between two conductors of a pair is there at once, and again after the
 *       way there and back (1). Along the pair Sa′a = (tc + td)/2, Sa′b = (tc − td)/2: the modes differ in velocity and loss,
 *       so that the two conductors exchange as much as they carry (2). M(τ) = |Σ √|S| u exp(j2πfτ)|/Σ √|S|, u = S/|S| without
 *       the skin effect's phase, −ln |S| rad (3): near 1 when S is the transmission of a line of delay τ
 *   <li>Symbols: Γc, Γd reflections of the common and of the differential mode at the end, tc, td their transmissions, a′, b′ the
 *       conductors' other ends (no unit); τ one way along the cable in µs, f in MHz
 *   <li>Refused: M(τ) of Sab is 0.7 or more for a τ that the cable's length allows, and that of no earlier τ is: the two are the ends of
 *       one pair, not the conductors of one
 *   <li>Warned of: Sa′a is the transmission of a line in the same way, ten turns or more, and the energy that the conductors exchange is
 *       less than a hundredth of what they carry: they are two pairs; and the energy that leaves a pair as common mode is more than a
 *       quarter of what leaves it as differential mode
 *   <li>Range: at least eight turns between the lowest and the highest frequency that has a signal, and some twenty frequencies; a
 *       shorter or coarser sweep tells nothing. Edge cases: length without a nominal velocity leaves 0.5 to 0.9 of that of light
 *   <li>Known error: two conductors, each in a screen of its own and the same in all, exchange nothing; hence the warning only
 * </ul>
 */
final class SingleEndedChecks {
    private static final double MATCH = 0.7;
    private static final double EARLY = 0.25;
    private static final double LEAST_TURNS = 8;
    private static final double TURNS_TO_TELL_CONDUCTORS = 10;
    private static final double LEAST_FREQUENCIES = 20;
    private static final double EXCHANGED = 0.01;
    private static final double CONVERTED = 0.25;
    private static final double STEPS_A_TURN = 4;
    private static final double SLOWEST = 0.5;
    private static final double FASTEST = 0.9;
    private static final double NOMINAL_WITHIN = 0.1;
    private static final double METRES_PER_MICROSECOND = 299.792458;

    private final NetworkData data;
    private final int first;
    private final double shortest;
    private final double longest;
    private final List<String> warnings = new ArrayList<>();

    private SingleEndedChecks(NetworkData data, int first, CableSpan span) {
        this.data = data;
        this.first = first;
        Double nominal = span.nominalVelocity();
        double fastest = nominal == null ? FASTEST : nominal / (1 - NOMINAL_WITHIN);
        double slowest = nominal == null ? SLOWEST : nominal / (1 + NOMINAL_WITHIN);
        this.shortest = span.metres() / (METRES_PER_MICROSECOND * fastest);
        this.longest = span.metres() / (METRES_PER_MICROSECOND * slowest);
    }

    /**
     * What is doubtful in the connection of conductors, as sentences; empty when nothing is.
     *
     * @param map what the rows of the file's matrix are connected to
     * @param first the first frequency that counts
     * @throws NetworkException when two ports at one end are the two ends of a pair
     */
    static List<String> warnings(NetworkData data, PortMap map, int first, CableSpan span) {
        SingleEndedChecks checks = new SingleEndedChecks(data, first, span);
        for (ModePort port : map.modePorts()) {
            Integer a = port.a();
            Integer b = port.b();
            if (a != null && b != null) {
                checks.refuseTheEndsOfOnePair(port, a - 1, b - 1);
            }
        }
        for (ModePort near : map.modePorts()) {
            Optional<ModePort> far = near.end() == End.NEAR
                    ? map.indexOf(End.FAR, near.pair()).map(map.modePorts()::get)
                    : Optional.empty();
            far.ifPresent(other -> checks.alongThePair(near, other));
        }
        return checks.warnings;
    }

    private void refuseTheEndsOfOnePair(ModePort port, int a, int b) {
        Transmission between = new Transmission(b, a);
        if (between.canBeTold(LEAST_TURNS)
                && between.bestMatch(shortest, longest) >= MATCH
                && !(between.bestMatch(0, EARLY * shortest) >= MATCH)) {
            throw new NetworkException(
                    data.file(),
                    data.line(first),
                    "ports " + (a + 1) + " and " + (b + 1) + " are said to be the conductors of pair " + port.pair()
                            + " at its " + port.end().word() + " end, but what passes between them takes as long as one"
                            + " way along the cable: they are the two ends of one pair, or of two, measured through"
                            + " baluns. Say \"mode\": \"differential\" of each, with its end and no conductor");
        }
    }

    private void alongThePair(ModePort near, ModePort far) {
        Integer a = near.a();
        Integer b = near.b();
        Integer farA = far.a();
        Integer farB = far.b();
        if (a == null || b == null || farA == null || farB == null) {
            return;
        }
        int[] from = {a - 1, b - 1};
        int[] to = {farA - 1, farB - 1};
        Transmission direct = new Transmission(to[0], from[0]);
        if (!direct.canBeTold(TURNS_TO_TELL_CONDUCTORS)) {
            return;
        }
        double carried = 0;
        double exchanged = 0;
        double differential = 0;
        double common = 0;
        for (int i = first; i < data.size(); i++) {
            double[][] re = new double[2][2];
            double[][] im = new double[2][2];
            for (int p = 0; p < 2; p++) {
                for (int q = 0; q < 2; q++) {
                    re[p][q] = data.re(i, to[p], from[q]);
                    im[p][q] = data.im(i, to[p], from[q]);
                    double energy = re[p][q] * re[p][q] + im[p][q] * im[p][q];
                    carried += p == q ? energy : 0;
                    exchanged += p == q ? 0 : energy;
                }
            }
            differential += energy(re, -1) + energy(im, -1);
            common += energy(re, 1) + energy(im, 1);
        }
        String ports = "Of pair " + near.pair() + " in " + data.file() + " (ports " + a + ", " + b + " and " + farA
                + ", " + farB + ") ";
        if (exchanged < EXCHANGED * carried && direct.bestMatch(shortest, longest) >= MATCH) {
            warnings.add(
                    ports + "the conductors carry a signal and exchange less than a hundredth of it, as two pairs do"
                            + " and the conductors of one do not. Were they measured through baluns? Then say \"mode\":"
                            + " \"differential\" of each port, with no conductor; the data were used as they are.");
        } else if (common > CONVERTED * differential) {
            warnings.add(
                    ports + "more than a quarter of the energy that should leave as differential mode leaves as common"
                            + " mode. Check which conductor each port is connected to, and the pair for a broken conductor; the data"
                            + " were used as they are.");
        }
    }

    /** Of what enters as a − b, what leaves as a − b (sign −1) or as a + b (sign 1), squared: one of the two parts. */
    private static double energy(double[][] s, int sign) {
        double part = (s[0][0] - s[0][1] + sign * (s[1][0] - s[1][1])) / 2;
        return part * part;
    }

    /** One entry of the matrix as if it were the transmission of a line. */
    private final class Transmission {
        private final double[] megahertz;
        private final double[] weight;
        private final double[] phase;
        private final double all;
        private final double band;
        private final double effective;

        Transmission(int row, int column) {
            int size = data.size() - first;
            this.megahertz = new double[size];
            this.weight = new double[size];
            this.phase = new double[size];
            double sum = 0;
            double squares = 0;
            double mean = 0;
            double spread = 0;
            for (int i = 0; i < size; i++) {
                double re = data.re(first + i, row, column);
                double im = data.im(first + i, row, column);
                double abs = Math.max(Levels.LEAST_MAGNITUDE, StrictMath.hypot(re, im));
                megahertz[i] = data.megahertz(first + i);
                weight[i] = Math.sqrt(abs);
                phase[i] = StrictMath.atan2(im, re) - StrictMath.log(abs);
                sum += weight[i];
                squares += weight[i] * weight[i];
                mean += weight[i] * megahertz[i];
                spread += weight[i] * megahertz[i] * megahertz[i];
            }
            this.all = sum;
            this.effective = sum * sum / squares;
            // an even spectrum of that spread is √12 times its standard deviation wide
            this.band = Math.sqrt(12 * Math.max(0, spread / sum - mean / sum * (mean / sum)));
        }

        boolean canBeTold(double turns) {
            return band * shortest >= turns && effective >= LEAST_FREQUENCIES;
        }

        /** The greatest of (3) within a range of delays, each point turned on from one delay to the next. */
        double bestMatch(double from, double to) {
            int steps = (int) Math.ceil((to - from) * band * STEPS_A_TURN) + 1;
            double[] re = new double[steps + 1];
            double[] im = new double[steps + 1];
            for (int i = 0; i < weight.length; i++) {
                double radianMicroseconds = 2 * Math.PI * megahertz[i];
                double x = weight[i] * StrictMath.cos(phase[i] + radianMicroseconds * from);
                double y = weight[i] * StrictMath.sin(phase[i] + radianMicroseconds * from);
                double cos = StrictMath.cos(radianMicroseconds * (to - from) / steps);
                double sin = StrictMath.sin(radianMicroseconds * (to - from) / steps);
                for (int k = 0; k <= steps; k++) {
                    re[k] += x;
                    im[k] += y;
                    double turned = x * cos - y * sin;
                    y = x * sin + y * cos;
                    x = turned;
                }
            }
            double best = 0;
            for (int k = 0; k <= steps; k++) {
                best = Math.max(best, StrictMath.hypot(re[k], im[k]) / all);
            }
            return best;
        }
    }
}
