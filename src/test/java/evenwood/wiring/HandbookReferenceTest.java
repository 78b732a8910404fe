package evenwood.wiring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.ReferenceTable;
import evenwood.rig.Cable;
import evenwood.rig.CableRun;
import evenwood.rig.Transformer;
import java.util.List;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Corners, dividers and noise as handbooks work them by hand. */
class HandbookReferenceTest {
    static List<ReferenceTable.Row> piezoRows() {
        return ReferenceTable.read("piezo-corner.csv");
    }

    /** 1/(2πRC) and 10·lg(1 + (fc/f)²), nine capacitances on fourteen loads. */
    @ParameterizedTest
    @MethodSource("piezoRows")
    void aPiezoOnALoadIsAFirstOrderHighPass(ReferenceTable.Row row) {
        double farads = row.number("c_nf") * 1e-9;
        Complex load = new Complex(1 / row.number("r_ohm"));
        assertThat(db(piezo(farads, 41.203).gain(load))).isCloseTo(row.number("att_41hz_db"), within(0.001));
        assertThat(db(piezo(farads, 82.407).gain(load))).isCloseTo(row.number("att_82hz_db"), within(0.001));
        assertThat(db(piezo(farads, 196.0).gain(load))).isCloseTo(row.number("att_196hz_db"), within(0.001));
        assertThat(db(piezo(farads, 1000).gain(load))).isCloseTo(row.number("att_1000hz_db"), within(0.001));
        double corner = row.number("corner_hz");
        if (corner > 1 && corner < 30_000) { // the highest point is looked for up to 1 MHz: far enough over the corner
            assertThat(BassCorner.of(hz -> db(piezo(farads, hz).gain(load)), true).orElseThrow()).isCloseTo(corner, within(0.005 * corner));
        }
    }

    /** Ideal transformers: a load is seen times the square of the turns, a source divided by it; a source of 10 kΩ and 1.5 kΩ load. */
    @ParameterizedTest
    @CsvSource({"10, -20.00, 600, 60000, 100.0", "11.55, -21.25, 1000, 133402, 74.96", "12, -21.58, 1500, 216000, 69.44",
        "16, -24.08, 3000, 768000, 39.06", "20, -26.02, 600, 240000, 25.0"})
    void aTransformerChangesVoltageByTurnsAndImpedanceByTheirSquare(double ratio, double changeDb, double loadOhms, double seenOhms, double sourceSeen) {
        TwoPort transformer = TwoPort.transformer(ratio);
        assertThat(db(transformer.gain(Complex.ZERO))).isCloseTo(changeDb, within(0.005));
        assertThat(transformer.inputSiemens(new Complex(1 / loadOhms)).reciprocal().norm()).isCloseTo(seenOhms, within(0.001 * seenOhms));
        assertThat(TwoPort.series(new Complex(10_000)).then(transformer).outputOhms().norm()).isCloseTo(sourceSeen, within(0.01));
    }

    /** A 10 kΩ source through a DI of 12:1 into 1.5 kΩ: by hand the source is 69.4 Ω behind a twelfth of its voltage, and with the
     * wire's 2.5 kΩ/144 and 40 Ω the divider is 1500/(1500 + 69.4 + 17.4 + 40). */
    @Test
    void aPassiveDiTurnsAHighImpedanceIntoALowOne() {
        Transformer transformer = Plugged.PRESETS.box("passive-di").transformer().orElseThrow();
        double byHand = 20 * Math.log10(1500 / (1500 + 10_000 / 144.0 + 2500 / 144.0 + 40) / 12);
        TwoPort di = TwoPort.series(new Complex(10_000)).then(Part.of(evenwood.rig.PluggedBox.of(Plugged.PRESETS.box("passive-di"))).at(1000));
        assertThat(db(di.gain(new Complex(1 / 1500.0)))).isCloseTo(byHand, within(0.05));
        assertThat(di.outputOhms().norm()).as("what the microphone input sees").isBetween(120.0, 130.0);
        assertThat(transformer.ratio()).isEqualTo(12);
    }

    /** Load over load and source: ratio 10 loses 0.828 dB. */
    @ParameterizedTest
    @CsvSource({"0.5, -9.542", "1, -6.021", "3, -2.499", "5, -1.584", "10, -0.828", "100, -0.086"})
    void bridgingLosesWhatTheDividerSays(double ratio, double lossDb) {
        assertThat(db(TwoPort.series(new Complex(1000)).gain(new Complex(1 / (1000 * ratio))))).isCloseTo(lossDb, within(0.001));
    }

    /** 20·lg(C/(C + Ccable)) at 100 pF/m. */
    @ParameterizedTest
    @CsvSource({"0.3, 1, -2.50", "0.5, 5, -6.02", "0.5, 10, -9.54", "1, 3, -2.28", "2.2, 10, -3.25", "10, 10, -0.83"})
    void aCableOnAPiezoIsACapacitiveDivider(double nanofarads, double metres, double lossDb) {
        assertThat(db(piezo(nanofarads * 1e-9, 1000).then(cable(metres, 1000)).gain(Complex.ZERO))).isCloseTo(lossDb, within(0.005));
    }

    /** 1/(2π·R·C) at 100 pF/m: there it is 3.01 dB down. */
    @ParameterizedTest
    @CsvSource({"10000, 10, 15920", "50000, 5, 6370", "100000, 10, 1590", "250000, 3, 2120", "1000, 30, 53050"})
    void aCableOnAResistanceIsALowPass(double ohms, double metres, double cornerHz) {
        assertThat(db(TwoPort.series(new Complex(ohms)).then(cable(metres, cornerHz)).gain(Complex.ZERO))).isCloseTo(-3.01, within(0.02));
    }

    /** 1/(2π√(LC)): the resonance of a coil with its cable. */
    @ParameterizedTest
    @CsvSource({"2.5, 500, 4502", "4, 700, 3008", "6, 1000, 2055", "8, 300, 3249"})
    void aCoilResonatesWithItsCapacitance(double henries, double picofarads, double resonanceHz) {
        double top = 0;
        double topDb = Double.NEGATIVE_INFINITY;
        for (double hz = 500; hz < 12_000; hz *= 1.0005) {
            TwoPort coil = TwoPort.series(new Complex(7000, 2 * Math.PI * hz * henries)).then(TwoPort.shunt(new Complex(0, 2 * Math.PI * hz * picofarads * 1e-12)));
            double level = db(coil.gain(new Complex(1e-6)));
            if (level > topDb) {
                topDb = level;
                top = hz;
            }
        }
        assertThat(top).isCloseTo(resonanceHz, within(0.01 * resonanceHz));
    }

    /** √(4kTRB) at 20 °C in 20 kHz, dBu; 150 Ω is −130.8 in a maker's application note. */
    @ParameterizedTest
    @CsvSource({"150, -130.92", "600, -124.90", "1000, -122.68", "10000, -112.68", "1000000, -92.68", "10000000, -82.68"})
    void aResistorMakesThermalNoise(double ohms, double dbu) {
        assertThat(Dbu.ofVolts(Math.sqrt(NoiseDensity.thermal(ohms) * 20_000))).isCloseTo(dbu, within(0.006));
    }

    /** √(kT/C): all the noise of a resistor across a capacitance, whatever the resistor; −108.7 dBu for 500 pF. */
    @ParameterizedTest
    @CsvSource({"0.5, 2200000, -108.7", "1, 1000000, -111.7", "2.2, 1000000, -115.1", "10, 470000, -121.7"})
    void acrossACapacitanceTheWholeNoiseIsKtOverC(double nanofarads, double ohms, double dbu) {
        double corner = 1 / (2 * Math.PI * ohms * nanofarads * 1e-9);
        double sum = 0;
        double step = corner / 1000;
        for (double hz = step / 2; hz < 400 * corner; hz += step) {
            Complex node = new Complex(1 / ohms, 2 * Math.PI * hz * nanofarads * 1e-9).reciprocal();
            sum += NoiseDensity.thermal(node.getRealPart()) * step;
        }
        assertThat(Dbu.ofVolts(Math.sqrt(sum))).isCloseTo(dbu, within(0.06));
    }

    /** On a piezo a larger load is quieter within hearing, though it is the larger resistor: by hand kT/C of 900 pF above 20 Hz with its
     * corner at 177 Hz (92 % of it) against 830 pF with 19 Hz (49 %), 2.4 dB. */
    @Test
    void tenMegohmAreQuieterOnAPiezoThanOne() {
        double one = ChainAnalysis.of(Plugged.in("piezo-bridge > instrument-cable 3 > active-di > microphone-cable 5 > mixer-microphone phantom"), 196)
            .joints().get(0).noiseDbu();
        double ten = ChainAnalysis.of(Plugged.in("piezo-bridge > instrument-cable 3 > piezo-di > microphone-cable 5 > mixer-microphone phantom"), 196)
            .joints().get(0).noiseDbu();
        assertThat(one - ten).isCloseTo(2.4, within(0.1));
    }

    /** 0 dBu is 0.7746 V; dBV = dBu − 2.2185; −10 dBV is −7.782 dBu; +4 dBu is 1.228 V. */
    @Test
    void levelsAreThoseOfTheTable() {
        assertThat(Dbu.toVolts(0)).isCloseTo(0.774597, within(1e-6));
        assertThat(Dbu.ofVolts(Math.pow(10, -0.5))).isCloseTo(-7.782, within(0.001));
        assertThat(Dbu.toVolts(4)).isCloseTo(1.2277, within(1e-4));
        assertThat(Dbu.toDbv(24)).isCloseTo(21.782, within(0.001));
    }

    /** The pad in a plug: 650 Ω each leg and 164 Ω across: 20·lg(164/1464) = −19.01 open,
     * and with 2 kΩ across it 20·lg(151.6/1451.6) = −19.62. */
    @Test
    void theInlinePadIsItsDivider() {
        TwoPort pad = Part.of(evenwood.rig.PluggedBox.of(Plugged.PRESETS.box("inline-pad"))).at(1000);
        assertThat(db(pad.gain(Complex.ZERO))).isCloseTo(20 * Math.log10(164.0 / 1464), within(0.001));
        assertThat(db(pad.gain(new Complex(1 / 2000.0)))).isCloseTo(-19.62, within(0.01));
    }

    /** IEC 61938 as a published summary has it. */
    @ParameterizedTest
    @CsvSource({"P48, 44, 52, 10, 13.95, 7.05", "P24, 20, 28, 10, 18.00, 20.00", "P12, 11, 13, 15, 6.90, 17.65"})
    void phantomPowerHasTheStandardsLimits(PhantomFeed feed, double least, double most, double milliamperes, double voltsLeft, double shorted) {
        assertThat(feed.leastVolts()).isEqualTo(least);
        assertThat(feed.mostVolts()).isEqualTo(most);
        assertThat(feed.mostMilliamperes()).isEqualTo(milliamperes);
        assertThat(feed.voltsLeft(milliamperes)).isCloseTo(voltsLeft, within(0.006));
        assertThat(feed.milliamperesShorted()).isCloseTo(shorted, within(0.006));
    }

    /** No preset asks more than the standard gives, and every one has enough left of 48 V. */
    @Test
    void noBoxDrawsMoreThanTheStandardGives() {
        for (String id : Plugged.PRESETS.ids(evenwood.rig.PresetKind.BOXES)) {
            evenwood.rig.Box box = Plugged.PRESETS.box(id);
            assertThat(box.phantomMilliamperes()).as(id).isLessThanOrEqualTo(PhantomFeed.P48.mostMilliamperes());
            assertThat(PhantomFeed.P48.voltsLeft(box.phantomMilliamperes())).as(id).isGreaterThanOrEqualTo(box.phantomLeastVolts());
        }
    }

    private static TwoPort piezo(double farads, double hz) {
        return TwoPort.series(new Complex(0, -1 / (2 * Math.PI * hz * farads)));
    }

    private static TwoPort cable(double metres, double hz) {
        Cable cable = new Cable("c", "cable", Cable.Made.INSTRUMENT, 100e-12, 0.0, 0, 0.2, true, false, false, 6, 10, "table");
        return Part.of(new CableRun(cable, metres)).at(hz);
    }

    private static double db(Complex gain) {
        return 20 * Math.log10(gain.norm());
    }
}
