package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.ReferenceTable;
import evenwood.ReferenceTable.Row;
import evenwood.sound.AudioBlock;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class LoudnessMeterReferenceTest {
    static Stream<Arguments> standardCases() {
        return Stream.of(8_000, 22_050, 44_100, 48_000, 96_000, 192_000)
            .flatMap(rate -> EbuLoudnessCases.at(rate).stream().map(line -> Arguments.of(rate, line)));
    }

    /** EBU Tech 3341 (November 2023) Table 1 cases 1–6 and 9–14; EBU Tech 3342 (November 2023) Table 1 cases 1–4. */
    @ParameterizedTest(name = "{1} at {0} Hz")
    @MethodSource("standardCases")
    void theStandardsSignalsReadAsTheyMust(int sampleRateHz, StandardCase line) {
        assertThat(line.ours()).isBetween(line.expected() - line.minus(), line.expected() + line.plus());
    }

    static Stream<Row> independentReadings() {
        return Stream.of("ebu-3341-cases.csv", "ebu-3342-cases.csv").flatMap(file -> ReferenceTable.read(file).stream())
            .filter(row -> row.text("reference_reading").matches("-?[0-9.]+( at 10 ms hop)?"));
    }

    /** Readings of a separate double-precision implementation from signals made of the same words, to 0.001 LU. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("independentReadings")
    void anotherImplementationReadsTheSame(Row row) {
        String group = row.text("document") + " case " + row.text("case");
        String signal = row.text("sub_index").isEmpty() ? "" : " signal " + row.text("sub_index");
        assertThat(EbuLoudnessCases.at(48_000)).filteredOn(line -> line.group().equals(group) && line.name().endsWith(signal)
                && line.expected() == row.number("expected"))
            .isNotEmpty()
            .allSatisfy(line -> assertThat(line.ours()).isCloseTo(Double.parseDouble(row.text("reference_reading").split(" ")[0]), within(0.0025)));
    }

    /** ITU-R BS.1770-5 Annex 1: a 0 dBFS sine of 997 Hz on one front channel reads −3.01 LKFS. */
    @ParameterizedTest(name = "{0} Hz")
    @ValueSource(ints = {8_000, 11_025, 16_000, 22_050, 32_000, 44_100, 48_000, 88_200, 96_000, 176_400, 192_000})
    void aFullScaleSineOnOneChannelReadsMinusThree(int sampleRateHz) {
        LoudnessMeter meter = new LoudnessMeter(sampleRateHz, 1);
        float[] sine = new float[10 * sampleRateHz];
        for (int i = 0; i < sine.length; i++) {
            sine[i] = (float) Math.sin(2 * Math.PI * 997.0 * i / sampleRateHz);
        }
        meter.accept(AudioBlock.of(0, sine));
        double tolerance = sampleRateHz == 48_000 ? 0.005 : 0.05;
        assertThat(meter.reading().integratedLufs()).isCloseTo(-3.01, within(tolerance));
    }
}
