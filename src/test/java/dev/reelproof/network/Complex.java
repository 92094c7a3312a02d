package dev.reelproof.network;

/** A complex number, for the models of the tests. */
record Complex(double re, double im) {
    static final Complex ONE = new Complex(1, 0);

    static Complex polar(double size, double radian) {
        return new Complex(size * Math.cos(radian), size * Math.sin(radian));
    }

    static Complex real(double re) {
        return new Complex(re, 0);
    }

    Complex plus(Complex other) {
        return new Complex(re + other.re, im + other.im);
    }

    Complex minus(Complex other) {
        return new Complex(re - other.re, im - other.im);
    }

    Complex times(Complex other) {
        return new Complex(re * other.re - im * other.im, re * other.im + im * other.re);
    }

    Complex times(double factor) {
        return new Complex(re * factor, im * factor);
    }

    Complex over(Complex other) {
        double square = other.re * other.re + other.im * other.im;
        return new Complex((re * other.re + im * other.im) / square, (im * other.re - re * other.im) / square);
    }

    double abs() {
        return Math.hypot(re, im);
    }

    /** A line of impedance zc and a total propagation γl between references z: {S11, S21}. */
    static Complex[] line(double zc, Complex gammaLength, double z) {
        Complex up = polar(Math.exp(gammaLength.re), gammaLength.im);
        Complex down = ONE.over(up);
        Complex cosh = up.plus(down).times(0.5);
        Complex sinh = up.minus(down).times(0.5);
        Complex divisor = cosh.times(2 * zc * z).plus(sinh.times(zc * zc + z * z));
        return new Complex[] {
            sinh.times(zc * zc - z * z).over(divisor), real(2 * zc * z).over(divisor)
        };
    }
}
