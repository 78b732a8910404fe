package evenwood.wiring;

import org.hipparchus.complex.Complex;

/**
 * A piece of wire, a transformer or a pad at one frequency: what goes in at one end against what comes out at the other.
 *
 * <p>How: chain matrix, input voltage = A·U + B·I and input current = C·U + D·I with U, I at the output, I flowing out.
 * Source: any text on linear networks; the matrices of pieces in a row are multiplied.
 */
record TwoPort(Complex a, Complex b, Complex c, Complex d) {
    static final TwoPort NOTHING = new TwoPort(Complex.ONE, Complex.ZERO, Complex.ZERO, Complex.ONE);

    static TwoPort series(Complex ohms) {
        return new TwoPort(Complex.ONE, ohms, Complex.ZERO, Complex.ONE);
    }

    static TwoPort shunt(Complex siemens) {
        return new TwoPort(Complex.ONE, Complex.ZERO, siemens, Complex.ONE);
    }

    /** Ideal, with so many turns at the input to one at the output. */
    static TwoPort transformer(double ratio) {
        return new TwoPort(new Complex(ratio), Complex.ZERO, Complex.ZERO, new Complex(1 / ratio));
    }

    TwoPort then(TwoPort next) {
        return new TwoPort(a.multiply(next.a).add(b.multiply(next.c)), a.multiply(next.b).add(b.multiply(next.d)),
            c.multiply(next.a).add(d.multiply(next.c)), c.multiply(next.b).add(d.multiply(next.d)));
    }

    /** Output voltage for one volt at the input, with a load. */
    Complex gain(Complex loadSiemens) {
        return a.add(b.multiply(loadSiemens)).reciprocal();
    }

    /** What the input end feels, with a load at the output. */
    Complex inputSiemens(Complex loadSiemens) {
        return c.add(d.multiply(loadSiemens)).divide(a.add(b.multiply(loadSiemens)));
    }

    /** Square of the magnitude. */
    static double squared(Complex number) {
        return number.getRealPart() * number.getRealPart() + number.getImaginaryPart() * number.getImaginaryPart();
    }

    /** What a load feels looking back, with a voltage source of no resistance at the input. */
    Complex outputOhms() {
        return b.divide(a);
    }
}
