package evenwood.report;

import evenwood.judge.ToneComparison;
import evenwood.measure.BandLevel;
import evenwood.measure.DistortionReading;
import evenwood.measure.NoiseReading;
import evenwood.measure.NoteEvenness;
import evenwood.measure.TakeReadings;
import evenwood.measure.ThirdOctave;
import evenwood.measure.ToneDifference;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** What was measured, as {@code check --json} has it: the part of {@link CheckJson} that holds no opinion. */
final class ReadingsJson {
    private static final double NONE = Double.NEGATIVE_INFINITY;

    private ReadingsJson() { }

    static void write(JsonFields json, TakeReadings readings, Optional<ToneComparison> tone) {
        json.part("take", take -> take
            .text("path", readings.take().name())
            .number("durationSeconds", readings.take().durationSeconds())
            .count("sampleRateHz", readings.take().format().sampleRateHz())
            .count("channel", readings.take().format().channel())
            .number("playingSeconds", readings.activity().playingSeconds())
            .number("quietSeconds", readings.activity().quietSeconds()));
        json.part("level", level -> level(level, readings));
        json.part("distortion", distortion -> distortion
            .text("verdict", JsonFields.word(readings.distortion().verdict()))
            .text("stage", readings.distortion().stage() == DistortionReading.Stage.NONE ? null : JsonFields.word(readings.distortion().stage()))
            .number("onsetDbfs", readings.distortion().onsetDbfs())
            .count("clippedSamples", readings.distortion().clippedSamples())
            .number("probability", readings.distortion().probability()));
        json.part("noise", noise -> noise(noise, readings));
        json.part("tone", part -> tone(part, readings, tone));
        json.parts("ringing", readings.ringing().rings(), (part, ring) -> part
            .number("frequencyHz", ring.frequencyHz())
            .number("startSeconds", ring.startSeconds())
            .number("toldSeconds", ring.toldSeconds())
            .number("growthDbPerSecond", ring.growthDbPerSecond()));
        notes(json, readings);
    }

    private static void level(JsonFields json, TakeReadings readings) {
        json.number("samplePeakDbfs", readings.level().samplePeakDbfs())
            .number("truePeakDbtp", readings.truePeak().truePeakDbtp())
            .number("integratedLufs", readings.loudness().integratedLufs())
            .number("loudnessRangeLu", readings.loudness().isSilent() ? NONE : readings.loudness().rangeLu())
            .number("softDbfs", readings.dynamics().softDbfs())
            .number("usualDbfs", readings.dynamics().usualDbfs())
            .number("hardDbfs", readings.dynamics().hardDbfs())
            .number("crestFactorDb", readings.level().isSilent() ? NONE : readings.level().crestFactorDb())
            .number("headroomDb", -readings.truePeak().truePeakDbtp());
    }

    private static void noise(JsonFields json, TakeReadings readings) {
        NoiseReading noise = readings.noise();
        json.number("floorDbfs", noise.floorDbfs())
            .number("floorDbfsA", noise.floorDbfsA())
            .number("signalToNoiseDb", readings.signalToNoiseDb())
            .number("mainsHz", noise.mainsHz())
            .number("humDbfs", noise.humDbfs())
            .number("buzzDbfs", noise.buzzDbfs())
            .number("hissDbfs", noise.hissDbfs())
            .parts("tones", noise.tones(), (part, tone) -> part.number("frequencyHz", tone.frequencyHz()).number("levelDbfs", tone.levelDbfs()))
            .count("clicks", readings.clicks().count())
            .count("dropouts", readings.dropouts().count());
    }

    private static void tone(JsonFields json, TakeReadings readings, Optional<ToneComparison> tone) {
        Map<ThirdOctave, ToneDifference.Band> differences = new TreeMap<>();
        tone.ifPresent(each -> each.difference().bands().forEach(band -> differences.put(band.band(), band)));
        json.text("instrument", tone.filter(each -> each.against() == ToneComparison.Against.INSTRUMENT).map(ToneComparison::name))
            .text("target", tone.map(ToneComparison::name))
            .parts("bands", readings.spectrum().bands(), (part, band) -> toneBand(part, band, tone.map(each -> each.wantedDb().get(band.band())),
                Optional.ofNullable(differences.get(band.band()))))
            .number("lowDb", readings.spectrum().lowDb())
            .number("midDb", readings.spectrum().midDb())
            .number("highDb", readings.spectrum().highDb());
    }

    /** With a wanted tone the uncertainty is that of the difference, else that of the level. */
    private static void toneBand(JsonFields json, BandLevel band, Optional<Double> wantedDb, Optional<ToneDifference.Band> difference) {
        json.number("centreHz", band.band().centreHz())
            .number("levelDb", band.relativeDb())
            .number("targetDb", wantedDb.orElse(NONE))
            .number("toleranceDb", difference.map(ToneDifference.Band::toleranceDb).orElse(NONE))
            .number("differenceDb", difference.map(ToneDifference.Band::differenceDb).orElse(NONE))
            .number("uncertaintyDb", difference.map(ToneDifference.Band::uncertaintyDb).orElse(band.relativeHalfWidthDb()));
    }

    private static void notes(JsonFields json, TakeReadings readings) {
        Map<Integer, Double> uneven = NoteEvenness.of(readings.notes()).stream()
            .collect(Collectors.toMap(NoteEvenness.Unevenness::midi, NoteEvenness.Unevenness::differenceDb));
        json.parts("notes", readings.notes().summaries(), (part, note) -> part
            .text("name", note.name())
            .number("frequencyHz", note.frequencyHz())
            .count("count", note.count())
            .number("levelDb", note.levelDbfs())
            .number("differenceDb", uneven.getOrDefault(note.midi(), NONE)));
    }
}
