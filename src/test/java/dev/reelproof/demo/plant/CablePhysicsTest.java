package dev.reelproof.demo.plant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** The demo's curves behave as the theory says that they must. */
class CablePhysicsTest {
    private static final TwistedPair PAIR = new TwistedPair(Wire.ofGauge(23), 1.03, 2.04, 0, 10, 1);
    private static final double ROOM = 20;

    /**
     * 24 AWG, 84.2133 ohm/km at 20 °C: computed elsewhere from 10.371 ohm·cmil/ft and the ASTM B258 formula. The unrounded 1/58
     * ohm·mm²/m is 10.37122 ohm·cmil/ft, 0.0018 ohm/km more.
     */
    @Test
    void wireHasTheResistanceOfItsGauge() {
        assertEquals(84.2133, Wire.ofGauge(24).ohmPerMetre(ROOM) * 1000, 0.002);
    }

    /** Copper loss goes as √f where the skin is thin: over a decade nearly √10, and below it by the constant term. */
    @Test
    void copperLossGoesAsTheRootOfFrequency() {
        double ratio = PAIR.neperPerMetre(500, ROOM) / PAIR.neperPerMetre(50, ROOM);
        assertTrue(ratio < Math.sqrt(10) && ratio > 0.97 * Math.sqrt(10), "ratio " + ratio);
    }

    @Test
    void lossGrowsByAboutFourPerMilleADegree() {
        double perDegree = (PAIR.neperPerMetre(100, 30) / PAIR.neperPerMetre(100, 20) - 1) / 10;
        // Half of 0.393 % through √ρ and 0.2 % of the jacket.
        assertEquals(0.00393 / 2 + 0.002, perDegree, 0.0002);
    }

    /** The delay above its high-frequency value falls as 1/√f: tenfold over two decades, but for the constant term. */
    @Test
    void delayFallsAsOneOverTheRootOfFrequency() {
        double infinite = Math.sqrt(2.04) / TwistedPair.LIGHT_M_PER_S * 1e9 * PAIR.takeUp();
        double at1 = PAIR.nanosecondPerMetre(1, ROOM) - infinite;
        double at100 = PAIR.nanosecondPerMetre(100, ROOM) - infinite;
        assertEquals(10, at1 / at100, 1.5);
    }

    @Test
    void aFinerLayTakesMoreWire() {
        TwistedPair coarse = new TwistedPair(Wire.ofGauge(23), 1.03, 2.04, 0, 13, 1);
        assertTrue(PAIR.takeUp() > coarse.takeUp());
        assertTrue(PAIR.faradPerMetre() > coarse.faradPerMetre());
        assertTrue(PAIR.nanosecondPerMetre(100, ROOM) > coarse.nanosecondPerMetre(100, ROOM));
    }

    /** Mean power of near-end coupling over many cables: 15 dB a decade. 400 cables: the mean power is known to 1/√400, 0.3 dB. */
    @Test
    void nearEndCrosstalkRisesByFifteenDecibelADecade() {
        double low = meanPower(20, 300, true);
        double high = meanPower(200, 300, true);
        assertEquals(15, 10 * Math.log10(high / low), 1.0);
    }

    /** Far-end coupling: 20 dB a decade and 10 log of the length. */
    @Test
    void farEndCrosstalkRisesByTwentyDecibelADecadeAndTenLogOfLength() {
        assertEquals(20, 10 * Math.log10(meanPower(200, 300, false) / meanPower(20, 300, false)), 1.0);
        assertEquals(10 * Math.log10(3), 10 * Math.log10(meanPower(100, 300, false) / meanPower(100, 100, false)), 1.0);
    }

    private static double meanPower(double megahertz, double lengthM, boolean nearEnd) {
        Random random = new Random(20260302);
        double sum = 0;
        int cables = 400;
        for (int i = 0; i < cables; i++) {
            Scatter scatter = new Scatter(random, lengthM);
            double neper = nearEnd ? 2 * PAIR.neperPerMetre(megahertz, ROOM) : 0;
            double radian = nearEnd ? 2 * PAIR.radianPerMetre(megahertz, ROOM) : 0.01 * megahertz / 100;
            sum += StrictMath.pow(
                    10, -scatter.sum(megahertz, neper, radian, 1, false).decibel() / 10);
        }
        return sum / cables;
    }

    /** A swing of the impedance shows as a peak where half a wavelength is its period, and nowhere else. */
    @Test
    void anUnevenCapstanShowsAtItsOwnFrequency() {
        double period = 0.26;
        double peak = Math.PI / period / (PAIR.radianPerMetre(1000, ROOM) / 1000);
        Echoes pulled = new Echoes(new Random(1), PAIR, 300, 0, 0.006, period);
        Echoes even = new Echoes(new Random(1), PAIR, 300, 0, 0, period);
        double at = pulled.returnLossDecibel(peak, ROOM, false);
        assertTrue(at < 16, at + " dB at " + peak + " MHz");
        assertTrue(even.returnLossDecibel(peak, ROOM, false) > at + 10);
        assertTrue(pulled.returnLossDecibel(peak * 0.8, ROOM, false) > at + 10);
    }
}
