package dev.reelproof.network;

import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * An invented cable as a network analyser would see it: each pair a lossy line in its differential and its common mode, with weak couplings
 * between them, written as single-ended S-parameters to 50 ohm.
 */
public final class SyntheticCable {
    private static final double METRES_PER_NANOSECOND = 0.299792458;
    private static final double NEPER_PER_DECIBEL = Math.log(10) / 20;

    private final int pairs;
    private final double metres;
    private final double velocity;
    private double nextAt100 = 60;
    private double flawAt100 = Double.NaN;
    private double gain = 1;
    private double oneWay = 1;

    public SyntheticCable(int pairs, double metres, double velocity) {
        this.pairs = pairs;
        this.metres = metres;
        this.velocity = velocity;
    }

    /** Near-end crosstalk between pairs 1 and 2 at the near end, dB at 100 MHz. */
    public SyntheticCable flaw(double decibelAt100) {
        this.flawAt100 = decibelAt100;
        return this;
    }

    /** Multiplies everything: above 1 a short network gains power. */
    public SyntheticCable gain(double newGain) {
        this.gain = newGain;
        return this;
    }

    /** Multiplies what goes from the lower to the higher port. */
    public SyntheticCable oneWay(double newOneWay) {
        this.oneWay = newOneWay;
        return this;
    }

    /** Insertion loss of every pair, dB. */
    public double loss(double megahertz) {
        return (1.7 * Math.sqrt(megahertz) + 0.0085 * megahertz) * metres / 100;
    }

    private double skinRadian(double megahertz) {
        return 1.7 * Math.sqrt(megahertz) * metres / 100 * NEPER_PER_DECIBEL;
    }

    /** Propagation delay of a pair, ns. */
    public double delay(int pair, double megahertz) {
        return metres / (velocity * METRES_PER_NANOSECOND) * (1 + 0.004 * pair)
                + skinRadian(megahertz) / (2 * Math.PI * megahertz) * 1000;
    }

    /** Near-end crosstalk between two pairs, dB. */
    public double next(int one, int other, End end, double megahertz) {
        boolean flawed = !Double.isNaN(flawAt100) && one + other == 3 && end == End.NEAR;
        return (flawed ? flawAt100 : nextAt100 + 0.1 * (one + other)) - 15 * Math.log10(megahertz / 100);
    }

    /** Far-end crosstalk less the loss of a pair, dB. */
    public double acrF(int disturbed, int disturbing, double megahertz) {
        return 45 + 0.1 * (disturbed + disturbing) - 20 * Math.log10(megahertz / 100);
    }

    /** TCL of a pair, dB. */
    public double tcl(int pair) {
        return 50 + pair;
    }

    /** The reference impedance of a pair's lines. */
    public double impedance(int pair) {
        return 99 + pair;
    }

    /** The ports in the order of the mode pairs: near end 1a, 1b, 2a … then the far end, as entries of {@code networks}. */
    public List<Port> ports(int... order) {
        List<Port> ports = new ArrayList<>();
        int count = order.length == 0 ? 4 * pairs : order.length;
        for (int i = 0; i < count; i++) {
            int place = order.length == 0 ? i : order[i];
            ports.add(new Port(
                    i + 1,
                    place < 2 * pairs ? End.NEAR : End.FAR,
                    place % (2 * pairs) / 2 + 1,
                    place % 2 == 0 ? Conductor.A : Conductor.B));
        }
        return ports;
    }

    /** The places of two pairs at both ends, for a file of eight ports that measures them alone. */
    public int[] placesOf(int one, int other) {
        int[] places = new int[8];
        int next = 0;
        for (int end = 0; end < 2; end++) {
            for (int pair : new int[] {one, other}) {
                places[next++] = end * 2 * pairs + 2 * (pair - 1);
                places[next++] = end * 2 * pairs + 2 * (pair - 1) + 1;
            }
        }
        return places;
    }

    /** The JSON of these ports. */
    public static String json(List<Port> ports) {
        List<String> entries = new ArrayList<>();
        for (Port port : ports) {
            entries.add(
                    "{\"port\": " + port.number() + ", \"end\": \"" + port.end().word() + "\", \"pair\": " + port.pair()
                            + (port.conductor() == null
                                    ? ", \"mode\": \"" + port.mode().word() + "\"}"
                                    : ", \"conductor\": \"" + port.conductor().letter() + "\"}"));
        }
        return "[" + String.join(", ", entries) + "]";
    }

    /** The matrix of the modes: differential near 1…n, far 1…n, then the common modes alike. */
    private Complex[][] modes(double megahertz) {
        int ends = 2 * pairs;
        Complex[][] modes = new Complex[2 * ends][2 * ends];
        for (Complex[] row : modes) {
            Arrays.fill(row, Complex.real(0));
        }
        for (int pair = 1; pair <= pairs; pair++) {
            Complex gamma = new Complex(
                    loss(megahertz) * NEPER_PER_DECIBEL, 2 * Math.PI * megahertz * delay(pair, megahertz) / 1000);
            put(modes, pair - 1, pairs + pair - 1, Complex.line(impedance(pair), gamma, 100));
            put(modes, ends + pair - 1, ends + pairs + pair - 1, Complex.line(30, gamma.times(1.5), 25));
            for (int end = 0; end < 2; end++) {
                int here = end * pairs + pair - 1;
                int there = (1 - end) * pairs + pair - 1;
                both(modes, ends + here, here, level(tcl(pair), megahertz * 3));
                both(modes, ends + there, here, level(tcl(pair) + loss(megahertz) + 5, megahertz * 40));
                for (int partner = pair + 1; partner <= pairs; partner++) {
                    int partnerHere = end * pairs + partner - 1;
                    int partnerThere = (1 - end) * pairs + partner - 1;
                    End at = End.values()[end];
                    both(modes, here, partnerHere, level(next(pair, partner, at, megahertz), megahertz * 5));
                    both(
                            modes,
                            here,
                            partnerThere,
                            level(acrF(pair, partner, megahertz) + loss(megahertz), megahertz * 490));
                }
            }
        }
        return modes;
    }

    private static Complex level(double decibel, double nanosecondMegahertz) {
        return Complex.polar(Math.pow(10, -decibel / 20), -2 * Math.PI * nanosecondMegahertz / 1000);
    }

    private static void put(Complex[][] modes, int near, int far, Complex[] line) {
        modes[near][near] = line[0];
        modes[far][far] = line[0];
        both(modes, near, far, line[1]);
    }

    private static void both(Complex[][] modes, int one, int other, Complex value) {
        modes[one][other] = value;
        modes[other][one] = value;
    }

    /** Single-ended S: near 1a, 1b, 2a … far 1a …: Mᵀ Smm M with d = (a − b)/√2 and c = (a + b)/√2. */
    private Complex[][] singleEnded(double megahertz) {
        Complex[][] modes = modes(megahertz);
        int ends = 2 * pairs;
        Complex[][] s = new Complex[2 * ends][2 * ends];
        for (int i = 0; i < 2 * ends; i++) {
            for (int j = 0; j < 2 * ends; j++) {
                double signI = i % 2 == 0 ? 1 : -1;
                double signJ = j % 2 == 0 ? 1 : -1;
                s[i][j] = modes[i / 2][j / 2]
                        .times(signI * signJ)
                        .plus(modes[i / 2][ends + j / 2].times(signI))
                        .plus(modes[ends + i / 2][j / 2].times(signJ))
                        .plus(modes[ends + i / 2][ends + j / 2])
                        .times(0.5 * gain * (i < j ? oneWay : 1));
            }
        }
        return s;
    }

    /**
     * A file of version 1, RI, in MHz.
     *
     * @param megahertz the frequencies
     * @param order for each port of the file the place that it is connected to, from 0, as {@link #ports} counts them; none for that order
     */
    public String touchstone(double[] megahertz, int... order) {
        StringBuilder text = new StringBuilder("! invented cable\n# MHz S RI R 50\n");
        for (double f : megahertz) {
            Complex[][] s = singleEnded(f);
            text.append(f);
            int count = order.length == 0 ? s.length : order.length;
            for (int i = 0; i < count; i++) {
                for (int j = 0; j < count; j++) {
                    if (j > 0 && j % 4 == 0) {
                        text.append('\n');
                    }
                    Complex value = order.length == 0 ? s[i][j] : s[order[i]][order[j]];
                    text.append(String.format(Locale.ROOT, " %.9e %.9e", value.re(), value.im()));
                }
                text.append('\n');
            }
        }
        return text.toString();
    }

    /**
     * A file of version 2.0 of the same cable whose rows are modes: the differential ones, then the common ones, to 100 and 25 ohm.
     *
     * @param megahertz the frequencies
     */
    public String mixedMode(double[] megahertz) {
        StringBuilder order = new StringBuilder();
        for (String mode : List.of("D", "C")) {
            for (int i = 0; i < 2 * pairs; i++) {
                order.append(' ').append(mode).append(2 * i + 1).append(',').append(2 * i + 2);
            }
        }
        return "[Version] 2.0\n# MHz S RI R 50\n[Number of Ports] " + 4 * pairs + "\n" + "[Mixed-Mode Order]" + order
                + "\n[Network Data]\n" + rows(megahertz, 4 * pairs) + "[End]\n";
    }

    /**
     * A file of version 1 of the differential modes alone, near end 1, 2 … then the far end, as a set of baluns gives it.
     *
     * @param option what the option line says of the reference, such as {@code R 100}
     * @param megahertz the frequencies
     */
    public String differential(String option, double[] megahertz) {
        return "# MHz S RI " + option + "\n" + rows(megahertz, 2 * pairs);
    }

    /** The first modes of all, gain and direction as they were set. */
    private String rows(double[] megahertz, int count) {
        StringBuilder text = new StringBuilder();
        for (double f : megahertz) {
            Complex[][] modes = modes(f);
            text.append(f);
            for (int i = 0; i < count; i++) {
                for (int j = 0; j < count; j++) {
                    // the file of two ports has S21 before S12; the modes are reciprocal
                    Complex value = modes[i][j].times(gain * (i < j ? oneWay : 1));
                    text.append(String.format(Locale.ROOT, " %.15e %.15e", value.re(), value.im()));
                }
                text.append('\n');
            }
        }
        return text.toString();
    }

    /** The differential ports of {@link #differential}. */
    public List<Port> differentialPorts() {
        List<Port> ports = new ArrayList<>();
        for (int i = 0; i < 2 * pairs; i++) {
            ports.add(Port.ofMode(i + 1, i < pairs ? End.NEAR : End.FAR, i % pairs + 1, PortMode.DIFFERENTIAL));
        }
        return ports;
    }

    /** Frequencies from 1 MHz, in steps of 1/50 decade or 2 MHz, whichever is wider. */
    public static double[] grid(double topMegahertz) {
        List<Double> grid = new ArrayList<>();
        for (double f = 1; f < topMegahertz; f = Math.max(f * Math.pow(10, 0.02), f + 2)) {
            grid.add(f);
        }
        grid.add(topMegahertz);
        return grid.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
