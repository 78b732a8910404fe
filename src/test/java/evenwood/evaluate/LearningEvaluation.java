package evenwood.evaluate;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.eq.BandResponse;
import evenwood.eq.ControlLaw;
import evenwood.eq.ControlLearning;
import evenwood.eq.LearnedLaw;
import evenwood.eq.NominalLaw;
import evenwood.measure.TakeReadings;
import evenwood.measure.ThirdOctave;
import evenwood.rig.Control;
import evenwood.rig.LearnedControl;
import evenwood.rig.Presets;
import evenwood.rig.Setting;
import evenwood.takes.PackagedTakes;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.TreeMap;

/**
 * Bass, middle and treble of an amp whose corners and tapers are not the preset's, learned from three different songs at 0, 5
 * and 10, and from how the amp answers to one turn after another; then asked for every position.
 */
public final class LearningEvaluation implements Evaluation {
    private static final double WITHIN_DB = 1.5;
    private static final double[] LEARNED_AT = {0, 5, 10};
    private static final int TURNS = 3;
    private static final double DEVIATIONS_95 = 1.96;

    private final Map<String, List<Double>> figures = new TreeMap<>();
    private final List<Control> tone = new Presets(Path.of("none")).controls("amp-bass-mid-treble").controls().stream().filter(Control::shapesTone).toList();

    @Override
    public void run(PrintStream out) {
        int stride = Integer.getInteger("evaluate.stride", 2);
        List<LikeSources.Source> sources = LikeSources.all();
        for (int i = 0; i < sources.size(); i += stride) {
            SplittableRandom random = new SplittableRandom(70 + i);
            UnknownKnob knob = UnknownKnob.of(tone.get(i / stride % tone.size()), random);
            List<float[]> songs = sources.get(i).songs().stream().map(PackagedTakes::samples).toList();
            takes(sources.get(i), knob, songs);
            answers(sources.get(i), knob, songs, random);
        }
        print(out);
    }

    private void takes(LikeSources.Source source, UnknownKnob knob, List<float[]> songs) {
        List<ControlLearning.Played> played = new ArrayList<>();
        for (int i = 0; i < LEARNED_AT.length; i++) {
            played.add(played(knob, at(knob, LEARNED_AT[i]), songs.get(i)));
        }
        Optional<LearnedControl> learned = ControlLearning.ofTakes(knob.control(), played);
        ControlLaw law = learned.<ControlLaw>map(LearnedLaw::new).orElseGet(NominalLaw::new);
        BandResponse response = response(source);
        for (double position : new double[] {0, 10}) {
            figure("takes at 0, 5, 10: from 5 to " + Math.round(position), error(law, knob, 5, position, response));
            figure("takes at 0, 5, 10: from 5 to 0 or 10, worst band", worst(law, knob, position, response));
            figure("nominal: from 5 to " + Math.round(position), error(new NominalLaw(), knob, 5, position, response));
            learned.ifPresent(each -> figure("share of bands within the uncertainty that was said", covered(each, knob, position, response)));
        }
        for (double position : new double[] {1, 2, 3, 4, 6, 7, 8, 9}) {
            figure("takes at 0, 5, 10: from 5 to positions between", error(law, knob, 5, position, response));
            figure("nominal: from 5 to positions between", error(new NominalLaw(), knob, 5, position, response));
        }
    }

    /** The amp is turned from 5 to somewhere and on; every answer is learned, then the way from 5 to 2 and 8 is asked for. */
    private void answers(LikeSources.Source source, UnknownKnob knob, List<float[]> songs, SplittableRandom random) {
        BandResponse response = response(source);
        Optional<LearnedControl> learned = Optional.empty();
        ControlLearning.Played before = played(knob, at(knob, 5), songs.get(0));
        ask("answered 0 times", new NominalLaw(), knob, response);
        for (int turn = 1; turn <= TURNS; turn++) {
            double position = turn % 2 == 1 ? 1 + 2 * random.nextDouble() : 7 + 2 * random.nextDouble();
            ControlLearning.Played now = played(knob, at(knob, knob.control().gain().orElseThrow().settable(position)), songs.get(turn % songs.size()));
            Optional<LearnedControl.Answer> answer = ControlLearning.answer(before, now, 1);
            if (answer.isPresent()) {
                learned = ControlLearning.further(knob.control(), learned, answer.get());
            }
            ask("answered " + turn + " times", learned.<ControlLaw>map(LearnedLaw::new).orElseGet(NominalLaw::new), knob, response);
            before = now;
        }
    }

    private void ask(String name, ControlLaw law, UnknownKnob knob, BandResponse response) {
        figure(name + ": from 5 to 2 and 8", error(law, knob, 5, 2, response));
        figure(name + ": from 5 to 2 and 8", error(law, knob, 5, 8, response));
    }

    private static ControlLearning.Played played(UnknownKnob knob, Setting at, float[] song) {
        return new ControlLearning.Played(at, LikeSources.heard(LikeFault.through(knob.at(at), song)));
    }

    /** Where the instrument sounds: from its lowest note, at least 80 Hz, to 10 kHz. */
    private static BandResponse response(LikeSources.Source source) {
        return new BandResponse(ThirdOctave.range(Math.max(80, source.lowestHz()), 10_000), LikeSources.RATE_HZ);
    }

    /** RMS over the bands of what was predicted against what the knob does; the level does not matter. */
    private static double error(ControlLaw law, UnknownKnob knob, double from, double to, BandResponse response) {
        double[] predicted = difference(law.bandsDb(at(knob, to), response), law.bandsDb(at(knob, from), response));
        return deviation(difference(predicted, real(knob, from, to, response)));
    }

    /** The band that is furthest off, around the mean of all. */
    private static double worst(ControlLaw law, UnknownKnob knob, double to, BandResponse response) {
        double[] predicted = difference(law.bandsDb(at(knob, to), response), law.bandsDb(at(knob, 5), response));
        double[] off = difference(predicted, real(knob, 5, to, response));
        double mean = Arrays.stream(off).average().orElse(0);
        return Arrays.stream(off).map(db -> Math.abs(db - mean)).max().orElse(0);
    }

    private static double[] real(UnknownKnob knob, double from, double to, BandResponse response) {
        return difference(response.db(knob.at(at(knob, to))), response.db(knob.at(at(knob, from))));
    }

    private static double covered(LearnedControl learned, UnknownKnob knob, double position, BandResponse response) {
        LearnedControl.Curve there = curve(learned, position);
        LearnedControl.Curve here = curve(learned, 5);
        double[] real = real(knob, 5, position, response);
        int within = 0;
        for (int i = 0; i < real.length; i++) {
            double hz = response.bands().get(i).centreHz();
            int point = (int) Math.round(68 + 12 * Math.log(hz / 1000) / Math.log(2));
            double deviation = Math.hypot(there.deviationDb().get(point), here.deviationDb().get(point));
            within += Math.abs(there.db(hz) - here.db(hz) - real[i]) <= DEVIATIONS_95 * deviation + 0.1 ? 1 : 0;
        }
        return within / (double) real.length;
    }

    private static LearnedControl.Curve curve(LearnedControl learned, double position) {
        return learned.curves().stream().filter(curve -> curve.at().gain().getAsDouble() == position).findFirst().orElseThrow();
    }

    private static Setting at(UnknownKnob knob, double position) {
        return Setting.neutral(knob.control()).withGain(position);
    }

    private static double[] difference(double[] a, double[] b) {
        double[] difference = a.clone();
        for (int i = 0; i < difference.length; i++) {
            difference[i] -= b[i];
        }
        return difference;
    }

    private static double deviation(double[] db) {
        double mean = Arrays.stream(db).average().orElse(0);
        return Math.sqrt(Arrays.stream(db).map(x -> (x - mean) * (x - mean)).average().orElse(0));
    }

    private void figure(String name, double value) {
        figures.computeIfAbsent(name, key -> new ArrayList<>()).add(value);
    }

    private void print(PrintStream out) {
        out.println("| predicted | trials | error, RMS dB: mean | median | 90 % under | within 1.5 dB |");
        out.println("|---|---|---|---|---|---|");
        figures.forEach((name, values) -> {
            double[] sorted = values.stream().mapToDouble(Double::doubleValue).sorted().toArray();
            out.printf(Locale.ROOT, "| %s | %d | %.2f | %.2f | %.2f | %.0f %% |%n", name, sorted.length, Arrays.stream(sorted).average().orElse(0),
                sorted[sorted.length / 2], sorted[Math.min(sorted.length - 1, (int) (0.9 * sorted.length))], 100 * within(values));
        });
        for (String ends : new String[] {"0", "10"}) {
            assertThat(within(figures.get("takes at 0, 5, 10: from 5 to " + ends))).as("share within 1.5 dB").isEqualTo(1);
        }
    }

    private static double within(List<Double> values) {
        return values.stream().filter(value -> value <= WITHIN_DB).count() / (double) values.size();
    }
}
