package evenwood.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import evenwood.coach.Assessment;
import evenwood.coach.Comparison;
import evenwood.coach.FaultChange;
import evenwood.coach.Move;
import evenwood.coach.Prediction;
import evenwood.coach.RigAnswer;
import evenwood.judge.Finding;
import evenwood.judge.Statement;
import evenwood.judge.ToneComparison;
import evenwood.judge.WiringComparison;
import evenwood.measure.BandLevel;
import evenwood.measure.DistortionReading;
import evenwood.measure.NoiseReading;
import evenwood.measure.NoteEvenness;
import evenwood.measure.NoteSummary;
import evenwood.measure.NotesReading;
import evenwood.measure.Ring;
import evenwood.measure.TakeReadings;
import evenwood.measure.ThirdOctave;
import evenwood.measure.Tone;
import evenwood.measure.ToneDifference;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * The result of a check as one JSON object, {@code evenwood.check/1}.
 *
 * <p>Field names are stable and stand in {@code docs/check.schema.json} (CheckJsonTest holds one against the other).
 * A measurement that is absent, infinite or of silence is {@code null}. Numbers have at most four decimals.
 */
public final class CheckJson {
    private static final JsonFactory FACTORY = new JsonFactory();

    private final JsonGenerator json;
    private final Sentences sentences;

    private CheckJson(JsonGenerator json, Sentences sentences) {
        this.json = json;
        this.sentences = sentences;
    }

    /** The object over many lines, for people too. */
    public static String of(Assessment assessment, Sentences sentences) {
        return text(assessment, sentences, true);
    }

    /** The same object on one line, for a stream of lines. */
    public static String line(Assessment assessment, Sentences sentences) {
        return text(assessment, sentences, false);
    }

    private static String text(Assessment assessment, Sentences sentences, boolean pretty) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = FACTORY.createGenerator(text)) {
            if (pretty) {
                json.useDefaultPrettyPrinter();
            }
            new CheckJson(json, sentences).write(assessment);
        } catch (IOException cannotHappen) {
            throw new UncheckedIOException(cannotHappen);
        }
        return text.toString();
    }

    private void write(Assessment assessment) throws IOException {
        TakeReadings readings = assessment.readings();
        json.writeStartObject();
        json.writeStringField("schema", "evenwood.check/1");
        take(readings);
        level(readings);
        distortion(readings);
        noise(readings);
        tone(readings, assessment.verdict().tone());
        ringing(readings.ringing().rings());
        notes(readings.notes());
        findings(assessment.verdict().findings());
        moves(assessment.moves());
        predicted(assessment.predicted());
        missing(assessment.verdict().missing());
        comparison(assessment.comparison());
        if (assessment.verdict().wiring().isPresent()) {
            wiring(assessment.verdict().wiring().get());
        }
        json.writeEndObject();
    }

    private void take(TakeReadings readings) throws IOException {
        json.writeObjectFieldStart("take");
        json.writeStringField("path", readings.take().name());
        number("durationSeconds", readings.take().durationSeconds());
        json.writeNumberField("sampleRateHz", readings.take().format().sampleRateHz());
        json.writeNumberField("channel", readings.take().format().channel());
        number("playingSeconds", readings.activity().playingSeconds());
        number("quietSeconds", readings.activity().quietSeconds());
        json.writeEndObject();
    }

    private void level(TakeReadings readings) throws IOException {
        json.writeObjectFieldStart("level");
        number("samplePeakDbfs", readings.level().samplePeakDbfs());
        number("truePeakDbtp", readings.truePeak().truePeakDbtp());
        number("integratedLufs", readings.loudness().integratedLufs());
        number("loudnessRangeLu", readings.loudness().isSilent() ? Double.NEGATIVE_INFINITY : readings.loudness().rangeLu());
        number("softDbfs", readings.dynamics().softDbfs());
        number("usualDbfs", readings.dynamics().usualDbfs());
        number("hardDbfs", readings.dynamics().hardDbfs());
        number("crestFactorDb", readings.level().isSilent() ? Double.NEGATIVE_INFINITY : readings.level().crestFactorDb());
        number("headroomDb", -readings.truePeak().truePeakDbtp());
        json.writeEndObject();
    }

    private void distortion(TakeReadings readings) throws IOException {
        json.writeObjectFieldStart("distortion");
        json.writeStringField("verdict", readings.distortion().verdict().name().toLowerCase(Locale.ROOT));
        text("stage", readings.distortion().stage() == DistortionReading.Stage.NONE ? null
            : readings.distortion().stage().name().toLowerCase(Locale.ROOT).replace('_', '-'));
        number("onsetDbfs", readings.distortion().onsetDbfs());
        json.writeNumberField("clippedSamples", readings.distortion().clippedSamples());
        number("probability", readings.distortion().probability());
        json.writeEndObject();
    }

    private void noise(TakeReadings readings) throws IOException {
        NoiseReading noise = readings.noise();
        json.writeObjectFieldStart("noise");
        number("floorDbfs", noise.floorDbfs());
        number("floorDbfsA", noise.floorDbfsA());
        number("signalToNoiseDb", readings.signalToNoiseDb());
        number("mainsHz", noise.mainsHz());
        number("humDbfs", noise.humDbfs());
        number("buzzDbfs", noise.buzzDbfs());
        number("hissDbfs", noise.hissDbfs());
        json.writeArrayFieldStart("tones");
        for (Tone tone : noise.tones()) {
            json.writeStartObject();
            number("frequencyHz", tone.frequencyHz());
            number("levelDbfs", tone.levelDbfs());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeNumberField("clicks", readings.clicks().count());
        json.writeNumberField("dropouts", readings.dropouts().count());
        json.writeEndObject();
    }

    private void tone(TakeReadings readings, Optional<ToneComparison> tone) throws IOException {
        json.writeObjectFieldStart("tone");
        text("instrument", tone.filter(each -> each.against() == ToneComparison.Against.INSTRUMENT).map(ToneComparison::name).orElse(null));
        text("target", tone.map(ToneComparison::name).orElse(null));
        Map<ThirdOctave, ToneDifference.Band> differences = new TreeMap<>();
        tone.ifPresent(each -> each.difference().bands().forEach(band -> differences.put(band.band(), band)));
        json.writeArrayFieldStart("bands");
        for (BandLevel band : readings.spectrum().bands()) {
            toneBand(band, tone.map(each -> each.wantedDb().get(band.band())), Optional.ofNullable(differences.get(band.band())));
        }
        json.writeEndArray();
        number("lowDb", readings.spectrum().lowDb());
        number("midDb", readings.spectrum().midDb());
        number("highDb", readings.spectrum().highDb());
        json.writeEndObject();
    }

    /** With a wanted tone the uncertainty is that of the difference, else that of the level. */
    private void toneBand(BandLevel band, Optional<Double> wantedDb, Optional<ToneDifference.Band> difference) throws IOException {
        double none = Double.NEGATIVE_INFINITY;
        json.writeStartObject();
        number("centreHz", band.band().centreHz());
        number("levelDb", band.relativeDb());
        number("targetDb", wantedDb.orElse(none));
        number("toleranceDb", difference.map(ToneDifference.Band::toleranceDb).orElse(none));
        number("differenceDb", difference.map(ToneDifference.Band::differenceDb).orElse(none));
        number("uncertaintyDb", difference.map(ToneDifference.Band::uncertaintyDb).orElse(band.relativeHalfWidthDb()));
        json.writeEndObject();
    }

    private void ringing(List<Ring> rings) throws IOException {
        json.writeArrayFieldStart("ringing");
        for (Ring ring : rings) {
            json.writeStartObject();
            number("frequencyHz", ring.frequencyHz());
            number("startSeconds", ring.startSeconds());
            number("toldSeconds", ring.toldSeconds());
            number("growthDbPerSecond", ring.growthDbPerSecond());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void notes(NotesReading notes) throws IOException {
        Map<Integer, Double> uneven = NoteEvenness.of(notes).stream()
            .collect(Collectors.toMap(NoteEvenness.Unevenness::midi, NoteEvenness.Unevenness::differenceDb));
        json.writeArrayFieldStart("notes");
        for (NoteSummary note : notes.summaries()) {
            json.writeStartObject();
            json.writeStringField("name", note.name());
            number("frequencyHz", note.frequencyHz());
            json.writeNumberField("count", note.count());
            number("levelDb", note.levelDbfs());
            number("differenceDb", uneven.getOrDefault(note.midi(), Double.NEGATIVE_INFINITY));
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void findings(List<Finding> findings) throws IOException {
        json.writeArrayFieldStart("findings");
        for (Finding finding : findings) {
            json.writeStartObject();
            json.writeStringField("fault", finding.fault().id());
            json.writeStringField("severity", finding.severity().id());
            number("probability", finding.probability());
            json.writeStringField("evidence", sentences.say(finding.evidence()));
            if (finding.bandHz().isPresent()) {
                json.writeFieldName("bandHz");
                json.writeArray(new double[] {rounded(finding.bandHz().get().lowHz()), rounded(finding.bandHz().get().highHz())}, 0, 2);
            } else {
                json.writeNullField("bandHz");
            }
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void moves(List<Move> moves) throws IOException {
        json.writeArrayFieldStart("moves");
        for (Move move : moves) {
            json.writeStartObject();
            json.writeNumberField("order", move.order());
            json.writeStringField("control", sentences.say(move.control().plainName()));
            json.writeStringField("kind", move.kind().id());
            number("frequencyHz", move.frequencyHz());
            number("q", move.q());
            number("fromDb", move.fromDb());
            number("toDb", move.toDb());
            number("changeDb", move.changeDb());
            text("from", move.from().orElse(null));
            text("to", move.to().orElse(null));
            json.writeStringField("why", sentences.say(move.why()));
            json.writeStringField("fault", move.fault().id());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void predicted(Optional<Prediction> predicted) throws IOException {
        if (predicted.isEmpty()) {
            json.writeNullField("predicted");
            return;
        }
        json.writeObjectFieldStart("predicted");
        json.writeArrayFieldStart("bands");
        for (ToneDifference.Band band : predicted.get().tone().orElse(ToneDifference.NONE).bands()) {
            json.writeStartObject();
            number("centreHz", band.centreHz());
            number("differenceDb", band.differenceDb());
            json.writeEndObject();
        }
        json.writeEndArray();
        number("truePeakDbtp", predicted.get().peak().truePeakDbtp());
        json.writeEndObject();
    }

    private void comparison(Optional<Comparison> comparison) throws IOException {
        if (comparison.isEmpty()) {
            json.writeNullField("comparison");
            return;
        }
        json.writeObjectFieldStart("comparison");
        json.writeStringField("before", comparison.get().before());
        json.writeArrayFieldStart("faults");
        for (FaultChange change : comparison.get().faults()) {
            json.writeStartObject();
            json.writeStringField("fault", change.fault().id());
            json.writeStringField("change", change.change().id());
            number("confidence", change.confidence());
            number("changeDb", change.changeDb());
            number("uncertaintyDb", change.halfWidthDb());
            json.writeStringField("evidence", sentences.say(change.evidence()));
            json.writeEndObject();
        }
        json.writeEndArray();
        answers(comparison.get().answers());
        json.writeEndObject();
    }

    private void answers(List<RigAnswer> answers) throws IOException {
        json.writeArrayFieldStart("moves");
        for (RigAnswer answer : answers) {
            json.writeStartObject();
            json.writeStringField("control", answer.control().name());
            json.writeStringField("from", answer.from().say());
            json.writeStringField("to", answer.to().say());
            number("meantDb", answer.meantDb());
            number("answeredDb", answer.answeredDb());
            number("uncertaintyDb", answer.halfWidthDb());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void missing(List<Statement> missing) throws IOException {
        json.writeArrayFieldStart("missing");
        for (Statement statement : missing) {
            json.writeString(sentences.say(statement));
        }
        json.writeEndArray();
    }

    private void wiring(WiringComparison wiring) throws IOException {
        json.writeObjectFieldStart("wiring");
        number("levelDifferenceDb", wiring.levelDb());
        number("levelUncertaintyDb", 2 * wiring.levelDeviationDb());
        number("noiseDifferenceDb", wiring.noiseDb());
        number("predictedBassCornerHz", wiring.predictedBassCornerHz());
        number("heardBassCornerHz", wiring.heardBassCornerHz());
        number("loadedProbability", wiring.loadedProbability());
        json.writeArrayFieldStart("statements");
        for (Statement statement : wiring.statements()) {
            json.writeString(sentences.say(statement));
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private void text(String field, String text) throws IOException {
        if (text == null) {
            json.writeNullField(field);
        } else {
            json.writeStringField(field, text);
        }
    }

    private void number(String field, OptionalDouble value) throws IOException {
        number(field, value.orElse(Double.NEGATIVE_INFINITY));
    }

    private void number(String field, double value) throws IOException {
        if (Double.isFinite(value)) {
            json.writeNumberField(field, rounded(value));
        } else {
            json.writeNullField(field);
        }
    }

    private static double rounded(double value) {
        double scaled = Math.rint(value * 1e4) / 1e4;
        return scaled == 0 ? 0 : scaled; // no negative zero
    }
}
