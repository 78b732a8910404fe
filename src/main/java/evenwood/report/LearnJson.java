package evenwood.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import evenwood.eq.ControlLearning;
import evenwood.measure.SweepReading;
import evenwood.rig.LearnedControl;
import evenwood.rig.Setting;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/** What was learned of a control as one JSON object, {@code evenwood.learn/1}; the fields stand in {@code docs/learn.schema.json}. */
public final class LearnJson {
    private static final double DEVIATIONS_95 = 1.96;

    private final JsonGenerator json;

    private LearnJson(JsonGenerator json) {
        this.json = json;
    }

    /**
     * @param rig    its name
     * @param sweeps what the sweeps it was learned from told; none when it was learned from playing
     * @param file   where it is kept
     */
    public static String of(String rig, LearnedControl learned, List<ControlLearning.Swept> sweeps, String file) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.useDefaultPrettyPrinter();
            new LearnJson(json).write(rig, learned, sweeps, file);
        } catch (IOException cannotHappen) {
            throw new UncheckedIOException(cannotHappen);
        }
        return text.toString();
    }

    private void write(String rig, LearnedControl learned, List<ControlLearning.Swept> sweeps, String file) throws IOException {
        LearnedControl.Curve reference = LearnText.reference(learned);
        json.writeStartObject();
        json.writeStringField("schema", "evenwood.learn/1");
        json.writeStringField("rig", rig);
        json.writeStringField("control", learned.control());
        json.writeStringField("how", learned.how().name().toLowerCase(Locale.ROOT));
        json.writeStringField("against", reference.at().say());
        json.writeArrayFieldStart("positions");
        for (LearnedControl.Curve curve : learned.curves()) {
            json.writeStartObject();
            place(curve.at());
            number("cleanUpToDbfs", curve.cleanUpToDbfs());
            curve(curve, reference);
            json.writeEndObject();
        }
        json.writeEndArray();
        sweeps(sweeps);
        json.writeStringField("kept", file);
        json.writeEndObject();
    }

    private void place(Setting at) throws IOException {
        json.writeStringField("position", at.say());
        json.writeBooleanField("on", at.on());
        number("gain", at.gain());
        number("frequency", at.frequency());
    }

    private void curve(LearnedControl.Curve curve, LearnedControl.Curve reference) throws IOException {
        json.writeArrayFieldStart("curve");
        for (int i = 0; i < LearnedControl.FREQUENCIES_HZ.size(); i++) {
            json.writeStartObject();
            number("frequencyHz", LearnedControl.FREQUENCIES_HZ.get(i));
            number("changeDb", curve.levelDb().get(i) - reference.levelDb().get(i));
            number("uncertaintyDb", curve == reference ? 0 : DEVIATIONS_95 * Math.hypot(curve.deviationDb().get(i), reference.deviationDb().get(i)));
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void sweeps(List<ControlLearning.Swept> sweeps) throws IOException {
        json.writeArrayFieldStart("sweeps");
        for (ControlLearning.Swept swept : sweeps) {
            for (SweepReading.Level level : swept.sweep().levels()) {
                json.writeStartObject();
                json.writeStringField("position", swept.at().say());
                number("sentDbfs", level.sentDbfs());
                number("heardPeakDbfs", level.heardPeakDbfs());
                number("harmonicsPercent", 100 * level.distortion());
                json.writeBooleanField("recordingFull", level.isRecordingFull());
                json.writeEndObject();
            }
        }
        json.writeEndArray();
    }

    private void number(String field, OptionalDouble value) throws IOException {
        number(field, value.orElse(Double.NEGATIVE_INFINITY));
    }

    private void number(String field, double value) throws IOException {
        if (Double.isFinite(value)) {
            double scaled = Math.rint(value * 1e4) / 1e4;
            json.writeNumberField(field, scaled == 0 ? 0 : scaled); // no negative zero
        } else {
            json.writeNullField(field);
        }
    }
}
