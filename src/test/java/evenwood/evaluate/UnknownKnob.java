package evenwood.evaluate;

import evenwood.eq.EqChain;
import evenwood.eq.EqFilter;
import evenwood.rig.Control;
import evenwood.rig.Setting;
import java.util.SplittableRandom;

/**
 * A tone knob that is marked like its preset and does something else: corner up to an octave off, width up to half an octave,
 * stops anywhere from 6 to 15 dB, the middle up to 1 dB off, and a taper that is bent.
 */
record UnknownKnob(Control control, double cornerHz, double q, double downDb, double middleDb, double upDb, double bend) {
    static UnknownKnob of(Control control, SplittableRandom random) {
        return new UnknownKnob(control, control.frequencyHz().orElseThrow() * Math.pow(2, between(random, -1, 1)),
            control.q() * Math.pow(2, between(random, -0.5, 0.5)), between(random, -15, -6), between(random, -1, 1), between(random, 6, 15),
            between(random, 0.75, 1.35));
    }

    private static double between(SplittableRandom random, double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private double gainDb(double position) {
        double part = Math.min(1, Math.abs(position - 5) / 5);
        double end = position < 5 ? downDb : upDb;
        return middleDb + (end - middleDb) * Math.pow(part, bend);
    }

    EqChain at(Setting setting) {
        double gain = gainDb(setting.gain().orElseThrow());
        return EqChain.of(switch (control.kind()) {
            case LOW_SHELF -> EqFilter.lowShelf(cornerHz, q, gain);
            case HIGH_SHELF -> EqFilter.highShelf(cornerHz, q, gain);
            default -> EqFilter.peak(cornerHz, q, gain);
        });
    }
}
