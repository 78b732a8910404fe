package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.ReferenceTable.Row;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class TruePeakMeterReferenceTest {
    private static final Pattern FILTER_READING = Pattern.compile("(-?[0-9.]+) \\(Annex 2 FIR\\).*");
    private static final Pattern SAMPLE_PEAK = Pattern.compile(".*sample peak (-?[0-9.]+) dBFS");

    static Stream<Arguments> standardCases() {
        return Stream.of(8_000, 16_000, 44_100, 48_000, 96_000, 192_000)
            .flatMap(rate -> EbuTruePeakCases.at(rate).stream().map(line -> Arguments.of(rate, line)));
    }

    /** EBU Tech 3341 (November 2023) Table 1 cases 15–23: +0.2 / −0.4 dB. */
    @ParameterizedTest(name = "{1} at {0} Hz")
    @MethodSource("standardCases")
    void theStandardsSignalsReadAsTheyMust(int sampleRateHz, StandardCase line) {
        assertThat(line.ours()).isBetween(line.expected() - line.minus(), line.expected() + line.plus());
    }

    static Stream<Row> rows() {
        return EbuTruePeakCases.rows().stream();
    }

    /** A separate implementation's reading of the same filter and of the samples; ours is the higher of the two. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    void anotherImplementationReadsTheSame(Row row) {
        double samplePeakDbfs = number(SAMPLE_PEAK, row.text("remark"));
        double filterDbtp = number(FILTER_READING, row.text("reference_reading"));
        int number = row.integer("case");
        LevelMeter level = new LevelMeter(new HopGrid(48_000), 1);
        Blocks.feed(EbuTruePeakCases.signal(number, 48_000), level::accept);
        assertThat(level.reading().samplePeakDbfs()).isCloseTo(samplePeakDbfs, within(0.001));
        assertThat(EbuTruePeakCases.at(48_000).get(number - 15).ours())
            .isCloseTo(Math.max(samplePeakDbfs, filterDbtp), within(0.001));
    }

    /**
     * A long tone whose frequency does not fit the sample rate reads what the printed filter makes of it, but never less
     * than its samples, which come as close to the crest as one likes. "Highest reading" of a separate computation.
     */
    @ParameterizedTest(name = "{0} of the sample rate")
    @CsvSource({"0.005,0.013", "0.02,0.009", "0.05,0.053", "0.1,0.190", "0.15,0.013", "0.2,0.022", "0.25,0.221", "0.3,-0.022",
        "0.35,0.045", "0.4,0.152", "0.45,-0.418", "0.475,-0.678"})
    void aSteadyToneReadsWhatTheFilterMakesOfIt(double ofSampleRate, double filterDb) {
        TruePeakMeter meter = new TruePeakMeter(new HopGrid(48_000), 1);
        float[] tone = new float[480_000];
        double cyclesPerFrame = ofSampleRate + Math.sqrt(2) * 1e-6;
        for (int i = 0; i < tone.length; i++) {
            // Fades in, because a hard onset rings in the filter.
            tone[i] = (float) (0.5 * Math.min(1, i / 48_000.0) * Math.sin(2 * Math.PI * cyclesPerFrame * i));
        }
        Blocks.feed(tone, meter::accept);
        assertThat(meter.reading().truePeakDbtp() - 20 * Math.log10(0.5)).isCloseTo(Math.max(0, filterDb), within(0.001));
    }

    private static double number(Pattern pattern, String text) {
        Matcher matcher = pattern.matcher(text);
        assertThat(matcher.matches()).as(text).isTrue();
        return Double.parseDouble(matcher.group(1));
    }
}
