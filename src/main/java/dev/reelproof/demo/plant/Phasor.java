package dev.reelproof.demo.plant;

/** A complex amplitude, re + j im. */
record Phasor(double re, double im) {

    /** e^−(a + jb). */
    static Phasor decaying(double neper, double radian) {
        double size = StrictMath.exp(-neper);
        return new Phasor(size * StrictMath.cos(radian), -size * StrictMath.sin(radian));
    }

    Phasor plus(Phasor other) {
        return new Phasor(re + other.re, im + other.im);
    }

    Phasor minus(Phasor other) {
        return new Phasor(re - other.re, im - other.im);
    }

    Phasor times(double factor) {
        return new Phasor(re * factor, im * factor);
    }

    Phasor times(Phasor other) {
        return new Phasor(re * other.re - im * other.im, re * other.im + im * other.re);
    }

    Phasor over(Phasor other) {
        double square = other.re * other.re + other.im * other.im;
        return new Phasor((re * other.re + im * other.im) / square, (im * other.re - re * other.im) / square);
    }

    /** Loss in dB: −20 log of the size. */
    double decibel() {
        return -10 * StrictMath.log10(re * re + im * im);
    }
}
