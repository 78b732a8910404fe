package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.takes.Faults;
import evenwood.takes.Injected;
import evenwood.takes.Interruptions;
import evenwood.takes.Mains;
import evenwood.takes.PackagedTakes;
import evenwood.takes.PlayedInstrument;
import evenwood.takes.Tones;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** On takes of sampled instruments, with the playing found by the program itself. */
class NoiseMeterRealAudioTest {
    private static final int RATE_HZ = 48_000;

    @ParameterizedTest
    @EnumSource(value = PlayedInstrument.class, names = {"STEEL_STRING_GUITAR", "LEVER_HARP", "CELLO", "FIVE_STRING_BANJO", "DOUBLE_BASS_BOWED"})
    void aCleanTakeHasNoNoiseButItsRoom(PlayedInstrument instrument) {
        float[] take = take(instrument, -85);
        NoiseReading noise = NoiseListening.to(take, RATE_HZ).noise();
        assertThat(noise.method()).isEqualTo(NoiseReading.Method.QUIET_PARTS);
        assertThat(noise.mainsHz()).isEmpty();
        assertThat(noise.tones()).isEmpty();
        // The room's −85 dBFS reach to 24 kHz and below 20 Hz; what is heard is up to 1 dB less.
        assertThat(noise.floorDbfs()).isBetween(-86.5, -84.5);
        assertThat(noise.hissDbfs()).isCloseTo(noise.floorDbfs(), within(0.4));
        assertThat(HeardInBlocks.clicks(take, RATE_HZ).count()).isZero();
        assertThat(HeardInBlocks.dropouts(take, RATE_HZ)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"STEEL_STRING_GUITAR, GROUND_LOOP, 50.3, -40", "NYLON_STRING_GUITAR, MAGNETIC, 59.8, -50", "VIOLIN, RECTIFIER, 49.7, -60",
        "LEVER_HARP, DIMMER, 60.2, -70", "CELLO, CHARGING, 50.1, -55"})
    void humIsMeasuredInTheRests(PlayedInstrument instrument, Mains.Origin origin, double mainsHz, double levelDbfs) {
        assertFound(take(instrument, -85), origin, mainsHz, levelDbfs, NoiseReading.Method.QUIET_PARTS);
    }

    @ParameterizedTest
    @CsvSource({"STEEL_STRING_GUITAR, GROUND_LOOP, 50.3, -40", "NYLON_STRING_GUITAR, MAGNETIC, 59.8, -50", "MANDOLIN, RECTIFIER, 49.7, -50",
        "LEVER_HARP, GROUND_LOOP, 60.2, -60", "CELLO, CHARGING, 50.1, -55"})
    void humIsMeasuredThroughPlayingThatNeverStops(PlayedInstrument instrument, Mains.Origin origin, double mainsHz, double levelDbfs) {
        assertFound(NoiseListening.withoutRests(take(instrument, -85), RATE_HZ), origin, mainsHz, levelDbfs, NoiseReading.Method.MINIMA);
    }

    @ParameterizedTest
    @EnumSource(value = PlayedInstrument.class, names = {"STEEL_STRING_GUITAR", "LEVER_HARP", "CELLO", "FIVE_STRING_BANJO"})
    void playingThatNeverStopsIsNotCalledMains(PlayedInstrument instrument) {
        float[] take = NoiseListening.withoutRests(take(instrument, -85), RATE_HZ);
        NoiseReading noise = NoiseListening.to(take, RATE_HZ).noise();
        assertThat(noise.mainsHz()).isEmpty();
        assertThat(noise.tones()).isEmpty();
    }

    @ParameterizedTest
    @EnumSource(Tones.Kind.class)
    void tonesThatAreNoMainsAreToldApart(Tones.Kind kind) {
        Injected<Tones.Truth> injected = Faults.tone(take(PlayedInstrument.STEEL_STRING_GUITAR, -85), RATE_HZ, kind, -65, 3);
        NoiseReading noise = NoiseListening.to(injected.samples(), RATE_HZ).noise();
        Tone tone = noise.tones().get(0);
        assertThat(tone.frequencyHz()).isCloseTo(injected.truth().frequencyHz(), within(0.005 * injected.truth().frequencyHz()));
        assertThat(tone.levelDbfs()).isCloseTo(injected.truth().levelDbfs(), within(1.0));
        assertThat(noise.mainsHz()).isEmpty();
    }

    @ParameterizedTest
    @EnumSource(value = PlayedInstrument.class, names = {"STEEL_STRING_GUITAR", "VIOLIN", "LEVER_HARP"})
    void aBadJackIsHeardInThePlaying(PlayedInstrument instrument) {
        Injected<List<Interruptions.Spot>> injected = Faults.crackle(take(instrument, -85), RATE_HZ, 1, -15, 5);
        ClickReading clicks = HeardInBlocks.clicks(injected.samples(), RATE_HZ);
        assertThat(clicks.count()).isBetween((int) Math.floor(0.8 * injected.truth().size()), injected.truth().size());
        assertThat(HeardInBlocks.dropouts(injected.samples(), RATE_HZ)).isEmpty();
    }

    @ParameterizedTest
    @EnumSource(Interruptions.Hole.class)
    void holesAreFoundWhereTheyAreAndAreNoClicks(Interruptions.Hole hole) {
        Injected<List<Interruptions.Spot>> injected = Faults.dropouts(take(PlayedInstrument.STEEL_STRING_GUITAR, -85), RATE_HZ, hole, 10, 4);
        List<Dropout> dropouts = HeardInBlocks.dropouts(injected.samples(), RATE_HZ);
        assertThat(dropouts).hasSizeBetween(9, 10).allSatisfy(dropout -> assertThat(injected.truth())
            .anySatisfy(spot -> assertThat(Math.abs(spot.startFrame() - dropout.startFrame())).isLessThan(4)));
        assertThat(HeardInBlocks.clicks(injected.samples(), RATE_HZ).count()).isZero();
    }

    private static void assertFound(float[] clean, Mains.Origin origin, double mainsHz, double levelDbfs, NoiseReading.Method method) {
        Injected<Mains.Truth> injected = Faults.mains(clean, RATE_HZ, origin, mainsHz, 0.01, levelDbfs, 7);
        NoiseReading noise = NoiseListening.to(injected.samples(), RATE_HZ).noise();
        assertThat(noise.method()).isEqualTo(method);
        assertThat(noise.mainsHz().orElseThrow()).isCloseTo(injected.truth().mainsHz(), within(0.02));
        assertThat(noise.humDbfs()).isCloseTo(injected.truth().humDbfs(), within(1.0));
    }

    private static float[] take(PlayedInstrument instrument, double roomDbfs) {
        return PackagedTakes.samples(PackagedTakes.of(instrument).withRoom(roomDbfs, 3));
    }
}
