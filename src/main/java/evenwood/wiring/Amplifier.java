package evenwood.wiring;

import evenwood.rig.PluggedBox;
import evenwood.rig.PluggedInput;
import org.hipparchus.complex.Complex;

/**
 * A stage that takes no power from what drives it: an amplifying box, or the input at the end.
 *
 * @param inputOhms     resistance of the input
 * @param inputFarads   capacitance of the input
 * @param padGain       attenuation before the amplifier, 1 for none
 * @param gain          of the amplifier
 * @param lowestHz      first-order high-pass in it, 0 for none
 * @param inputNoise    V²/Hz at the amplifier, behind the pad
 * @param outputNoise   V²/Hz behind the gain
 * @param outputOhms    resistance of the output
 */
record Amplifier(double inputOhms, double inputFarads, double padGain, double gain, double lowestHz, double inputNoise,
                 double outputNoise, double outputOhms) {
    static Amplifier of(PluggedBox plugged) {
        return new Amplifier(plugged.box().inputOhms(), plugged.box().inputFarads(), ratio(-plugged.padDb()), ratio(plugged.gainDb()),
            plugged.box().lowestHz(), NoiseDensity.ofNanovolts(plugged.box().noiseNanovolts()),
            NoiseDensity.ofDbu(plugged.box().outputNoiseDbu()), plugged.box().outputOhms());
    }

    static Amplifier of(PluggedInput plugged, double gainDb) {
        return new Amplifier(plugged.input().inputOhms(), plugged.input().inputFarads(), 1, ratio(gainDb), 0,
            NoiseDensity.ofEin(plugged.input().einDbu(), plugged.input().einSourceOhms()),
            NoiseDensity.ofDbu(plugged.input().outputNoiseDbu()), 0);
    }

    Complex inputSiemens(double hz) {
        return new Complex(1 / inputOhms, Part.omega(hz) * inputFarads);
    }

    /** From its terminals to behind the gain. */
    Complex gainAt(double hz) {
        Complex all = new Complex(padGain * gain);
        return lowestHz == 0 ? all : all.divide(new Complex(1, -lowestHz / hz));
    }

    /** V²/Hz behind the gain for so much at its terminals. */
    double noiseBehind(double noiseAtTerminals, double hz) {
        double squared = TwoPort.squared(gainAt(hz));
        return squared * (noiseAtTerminals + inputNoise / (padGain * padGain)) + outputNoise;
    }

    private static double ratio(double db) {
        return Math.pow(10, db / 20);
    }
}
