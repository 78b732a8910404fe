package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.ReferenceTable;
import evenwood.sound.SoundFormat;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The distortion detectors against closed forms. */
class HalfWaveShapesReferenceTest {
    private static final int RATE_HZ = 48_000;
    private static final double STEP_DB = 0.1;

    static Stream<ReferenceTable.Row> hardRows() {
        return ReferenceTable.read("hard-clip-thd.csv").stream().filter(row -> row.number("overdrive_db") > 0);
    }

    /** Below a drive of 0.7 the tanh takes less than 1.5 dB; rows with bias are not symmetric. */
    static Stream<ReferenceTable.Row> softRows() {
        return ReferenceTable.read("soft-clip-thd.csv").stream()
            .filter(row -> row.number("bias") == 0 && row.number("drive_g") >= 0.5 && row.number("drive_g") <= 2);
    }

    /** Project reference 5.2: time at the rail = 1 − 2θc/π. An edge is known to a sample, of 966 a period. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("hardRows")
    void aClippedSineStaysAtFullScaleAsLongAsTheClosedFormSays(ReferenceTable.Row row) {
        float[] sine = Signals.sine(RATE_HZ, 10, 49.7, 1 / row.number("clip_ratio_c_over_A"));
        double codes = 1 << 23;
        for (int i = 0; i < sine.length; i++) {
            sine[i] = (float) (Math.max(-codes, Math.min(codes - 1, Math.rint(sine[i] * codes))) / codes);
        }
        DistortionMeter meter = new DistortionMeter(new SoundFormat(RATE_HZ, 1, 1, 24), new HopGrid(RATE_HZ), 1000);
        Blocks.feed(sine, meter::accept);
        double percent = 100.0 * meter.reading().clippedSamples() / sine.length;
        assertThat(percent).isCloseTo(row.number("time_clipped_percent"), within(0.1));
    }

    /**
     * A tone that swells by 30 dB to drive g through y = tanh(g·sin θ), project reference 5.3. The row gives how much the
     * fundamental is short; its peak is short by that, plus what the harmonics add to the RMS, plus the crest factor's
     * distance from a sine's. The quieter tops that the meter compares with are bent a little too, so of a tanh it finds
     * two thirds to all of it and the onset up to 2 dB late; how much exactly follows from the definition ({@link #expected}).
     */
    @ParameterizedTest(name = "{0}")
    @MethodSource("softRows")
    void compressionOfASwellingToneIsThatOfTheClosedForm(ReferenceTable.Row row) {
        double g = row.number("drive_g");
        double rmsDb = 10 * Math.log10(1 + Math.pow(row.number("thd_f_percent") / 100, 2));
        double shortDb = -(row.number("compression_db") + rmsDb + row.number("crest_factor_db") - 10 * Math.log10(2));
        assertThat(shortDb).as("the row against its own definition").isCloseTo(20 * Math.log10(g / Math.tanh(g)), within(0.002));
        double foundDb = curve(swelling(g), true).compressionDb();
        assertThat(foundDb).isCloseTo(expected(g).compressionDb(), within(0.05 + 0.05 * shortDb));
        assertThat(foundDb).isBetween(0.62 * shortDb, 1.05 * shortDb);
    }

    /** tanh is 1 dB short at an output of tanh(0.6125) = 0.5459 (20·lg(0.6125/0.5459) = 1.000). */
    @ParameterizedTest(name = "drive {0}")
    @ValueSource(doubles = {1, 1.5, 2, 3})
    void onsetOfASwellingToneIsWhereItsPeaksAreOneDecibelShort(double g) {
        assertThat(20 * Math.log10(0.6125 / Math.tanh(0.6125))).isCloseTo(1, within(0.001));
        double trueDbfs = 20 * Math.log10(Math.tanh(0.6125));
        for (boolean upper : new boolean[]{true, false}) {
            double foundDbfs = curve(swelling(g), upper).onsetDbfs();
            assertThat(foundDbfs).isCloseTo(expected(g).onsetDbfs(), within(0.3));
            assertThat(foundDbfs).isBetween(trueDbfs - 0.3, trueDbfs + 2.3);
        }
    }

    /**
     * The definition in closed form: a sine of amplitude a behind tanh stands above 0.9·y for 2·acos(atanh(0.9·y)/a),
     * where a plain sine does for 2·acos(0.9); its autocorrelation falls to 0.9 at a lag that is summed up here.
     */
    private static CompressionCurve expected(double drive) {
        double top = Math.tanh(drive);
        double reference = 0;
        int count = 0;
        for (double dB = -15.95; dB < -8; dB += STEP_DB) {
            reference += Math.log(slope(top * Math.pow(10, dB / 20)));
            count++;
        }
        double compressionDb = 0;
        double onset = Double.POSITIVE_INFINITY;
        for (double dB = -15.95; dB < 0; dB += STEP_DB) {
            compressionDb += (Math.max(1, Math.exp(reference / count) / slope(top * Math.pow(10, dB / 20))) - 1) * STEP_DB;
            if (compressionDb >= 1 && onset == Double.POSITIVE_INFINITY) {
                onset = 20 * Math.log10(top) + dB;
            }
        }
        return new CompressionCurve(onset, compressionDb, 20 * Math.log10(top), 0);
    }

    private static double slope(double y) {
        double a = inverseTanh(y);
        double ratio = lagOfFall(a) / Math.acos(inverseTanh(0.9 * y) / a);
        return ratio * ratio;
    }

    /** In radians, of tanh(a·sin θ). */
    private static double lagOfFall(double a) {
        double low = 0;
        double high = 1;
        while (high - low > 1e-5) {
            double middle = (low + high) / 2;
            double product = 0;
            double square = 0;
            for (int i = 0; i < 256; i++) {
                double phase = 2 * Math.PI * i / 256;
                product += Math.tanh(a * Math.sin(phase)) * Math.tanh(a * Math.sin(phase + middle));
                square += Math.pow(Math.tanh(a * Math.sin(phase)), 2);
            }
            if (product > 0.9 * square) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private static double inverseTanh(double y) {
        return 0.5 * Math.log((1 + y) / (1 - y));
    }

    /** Any linear chain: a swelling tone stays a tone. */
    @ParameterizedTest(name = "{0} Hz")
    @ValueSource(doubles = {82.4, 196, 440, 1318.5})
    void aSwellingToneInALinearChainIsNotCompressed(double hz) {
        float[] sound = Signals.sine(RATE_HZ, 20, hz, 1);
        for (int i = 0; i < sound.length; i++) {
            sound[i] *= (float) (0.9 * Math.pow(10, -2 * (1 - (double) i / sound.length)));
        }
        assertThat(curve(sound, true).compressionDb()).isLessThan(0.15);
    }

    /** Slepian's model: near a high top a Gaussian process follows its autocorrelation, whatever its spectrum. */
    @ParameterizedTest(name = "low-pass {0}, high-pass {1}")
    @CsvSource({"0.02, 0", "0.1, 0", "0.3, 0", "0.1, 0.02", "0.3, 0.1"})
    void highTopsOfGaussianNoiseAreAboutAsRoundAsItsAutocorrelationSaysWhateverItsSpectrum(double lowPass, double highPass) {
        float[] noise = Signals.noise(9, RATE_HZ, 60, 0.1);
        for (int pass = 0; pass < 3; pass++) {
            smooth(noise, lowPass, false);
        }
        smooth(noise, highPass, true);
        double rms = Math.sqrt(java.util.stream.IntStream.range(0, noise.length).mapToDouble(i -> noise[i] * (double) noise[i]).average().orElseThrow());
        double threeSigmaDbfs = 20 * Math.log10(3 * rms);
        TopTable.Sums high = table(noise).sums(true, TopTable.When.ANY, threeSigmaDbfs, threeSigmaDbfs + 6);
        assertThat(high.count()).isGreaterThan(50);
        assertThat(high.slope()).isBetween(0.1, 0.45);
    }

    private static void smooth(float[] x, double k, boolean takeAway) {
        double held = 0;
        for (int i = 0; i < x.length && k > 0; i++) {
            held += k * (x[i] - held);
            x[i] = (float) (takeAway ? x[i] - held : held);
        }
    }

    /** 30 dB in 20 s, exponentially, at 196 Hz. */
    private static float[] swelling(double drive) {
        float[] sound = Signals.sine(RATE_HZ, 20, 196, 1);
        for (int i = 0; i < sound.length; i++) {
            sound[i] = (float) Math.tanh(drive * Math.pow(10, -1.5 * (1 - (double) i / sound.length)) * sound[i]);
        }
        return sound;
    }

    private static CompressionCurve curve(float[] sound, boolean upper) {
        return CompressionCurve.of(table(sound), upper);
    }

    private static TopTable table(float[] sound) {
        TopTable table = new TopTable();
        int frames = new HopGrid(RATE_HZ).hopFrames() / 2;
        HalfWaveShapes shapes = new HalfWaveShapes(frames, table);
        StretchHistory history = new StretchHistory(10, RATE_HZ);
        float[] stretch = new float[frames];
        for (int start = 0; start + frames <= sound.length; start += frames) {
            System.arraycopy(sound, start, stretch, 0, frames);
            history.accept(stretch);
            shapes.accept(stretch, history);
        }
        return table;
    }
}
