package evenwood.targets;

import evenwood.measure.BandLevel;
import evenwood.sound.SoundFormat;
import evenwood.takes.Heard;
import evenwood.takes.RecordedTakes;
import java.util.List;

/**
 * The nearest relatives of a cajón among the packaged recordings: bass strokes and slaps of a hand drum, and of a low tom
 * with a snare drum, struck in turn. Recordings: Debian's sonic-pi-samples.
 */
final class Cajon {
    private static final SoundFormat FORMAT = new SoundFormat(RecordedTakes.SAMPLE_RATE_HZ, 1, 1, 24);
    private static final double STROKE_SECONDS = 0.35;
    private static final double REST_SECONDS = 1.5;
    private static final int ROUNDS = 10;

    private Cajon() { }

    static List<List<Double>> sources() {
        return List.of(
            levelsDb("tabla_ghe1", "tabla_na", "tabla_ghe2", "tabla_tas1", "tabla_ghe3", "tabla_na_o"),
            levelsDb("drum_tom_lo_hard", "drum_snare_soft", "drum_tom_lo_soft", "drum_snare_hard"));
    }

    private static List<Double> levelsDb(String... strokes) {
        int step = (int) (STROKE_SECONDS * RecordedTakes.SAMPLE_RATE_HZ);
        int start = (int) (REST_SECONDS * RecordedTakes.SAMPLE_RATE_HZ);
        float[] take = new float[start + step * strokes.length * ROUNDS + start];
        for (int i = 0; i < strokes.length * ROUNDS; i++) {
            float[] stroke = RecordedTakes.samples(strokes[i % strokes.length]);
            int at = start + i * step;
            for (int k = 0; k < Math.min(stroke.length, take.length - at); k++) {
                take[at + k] += 0.3f * stroke[k];
            }
        }
        return Heard.readings(take, FORMAT).spectrum().bands().stream().map(BandLevel::relativeDb).map(level -> Math.max(-100, level)).toList();
    }
}
