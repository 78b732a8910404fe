package evenwood.wiring;

import evenwood.rig.CableRun;
import evenwood.rig.Pickup;
import evenwood.rig.PluggedBox;
import evenwood.rig.Transformer;
import org.hipparchus.complex.Complex;

/** A passive piece of the chain, at any frequency. */
interface Part {
    /** The resistor across a passive DI's transformer that its pad divides into; common practice. */
    double PAD_SHUNT_OHMS = 22_000;

    TwoPort at(double frequencyHz);

    /** What stands between a pickup's own voltage and its terminals. */
    static Part of(Pickup pickup) {
        return hz -> {
            Complex series = new Complex(pickup.seriesOhms(), omega(hz) * pickup.seriesHenries());
            if (pickup.seriesFarads().isPresent()) {
                series = series.add(new Complex(0, -1 / (omega(hz) * pickup.seriesFarads().getAsDouble())));
            }
            double parallelSiemens = pickup.parallelOhms().isPresent() ? 1 / pickup.parallelOhms().getAsDouble() : 0;
            return TwoPort.series(series).then(TwoPort.shunt(new Complex(parallelSiemens, omega(hz) * pickup.parallelFarads())));
        };
    }

    /**
     * A cable as half its resistance and inductance on either side of its capacitance: at 20 kHz the wave is kilometres long, so
     * one lump will do.
     */
    static Part of(CableRun run) {
        return hz -> {
            Complex half = new Complex(run.cable().ohmsPerMetre() * run.metres() / 2, omega(hz) * run.cable().henriesPerMetre() * run.metres() / 2);
            Complex across = new Complex(0, omega(hz) * run.cable().faradsPerMetre() * run.metres());
            return TwoPort.series(half).then(TwoPort.shunt(across)).then(TwoPort.series(half));
        };
    }

    /** A passive box: its pad, if switched in, then its transformer or its resistors. */
    static Part of(PluggedBox plugged) {
        return hz -> {
            TwoPort part = TwoPort.shunt(new Complex(0, omega(hz) * plugged.box().inputFarads()));
            if (plugged.padDb() > 0) {
                double ratio = Math.pow(10, plugged.padDb() / 20);
                part = part.then(TwoPort.series(new Complex(PAD_SHUNT_OHMS * (ratio - 1)))).then(TwoPort.shunt(new Complex(1 / PAD_SHUNT_OHMS)));
            }
            if (plugged.box().padShuntOhms() > 0) {
                part = part.then(TwoPort.series(new Complex(plugged.box().padSeriesOhms())))
                    .then(TwoPort.shunt(new Complex(1 / plugged.box().padShuntOhms())));
            }
            return plugged.box().transformer().isPresent() ? part.then(transformer(plugged.box().transformer().get(), hz)) : part;
        };
    }

    /** An output's own resistance. */
    static Part ofOutput(double ohms) {
        return hz -> TwoPort.series(new Complex(ohms));
    }

    static double omega(double frequencyHz) {
        return 2 * Math.PI * frequencyHz;
    }

    private static TwoPort transformer(Transformer transformer, double hz) {
        return TwoPort.series(new Complex(transformer.primaryOhms()))
            .then(TwoPort.shunt(new Complex(0, -1 / (omega(hz) * transformer.primaryHenries()))))
            .then(TwoPort.transformer(transformer.ratio())).then(TwoPort.series(new Complex(transformer.secondaryOhms())));
    }
}
