package evenwood.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import evenwood.wiring.Alternative;
import evenwood.wiring.Dbu;
import evenwood.wiring.JointReport;
import evenwood.wiring.WayReport;
import evenwood.wiring.WiringRules;
import evenwood.wiring.WiringVerdict;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** A connection plan as one JSON object, {@code evenwood.wire/1}; the fields stand in {@code docs/wire.schema.json}. */
public final class WireJson {
    private static final double FIRST_BAND_HZ = 1000;
    private static final int LOWEST_BAND = -17; // 20 Hz
    private static final int HIGHEST_BAND = 13; // 20 kHz

    private final WirePlan plan;
    private final Sentences sentences;
    private final JsonGenerator json;

    private WireJson(WirePlan plan, Sentences sentences, JsonGenerator json) {
        this.plan = plan;
        this.sentences = sentences;
        this.json = json;
    }

    public static String of(WirePlan plan, Sentences sentences) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.useDefaultPrettyPrinter();
            new WireJson(plan, sentences, json).write();
        } catch (IOException cannotHappen) {
            throw new UncheckedIOException(cannotHappen);
        }
        return text.toString();
    }

    private void write() throws IOException {
        json.writeStartObject();
        json.writeStringField("schema", "evenwood.wire/1");
        json.writeStringField("rig", plan.rig().name());
        json.writeStringField("instrument", plan.rig().instrument().id());
        number("lowestHz", plan.report().lowestHz());
        json.writeStringField("pickup", plan.report().connection().pickup().id());
        json.writeStringField("fit", word(WiringRules.worst(plan.verdicts())));
        json.writeArrayFieldStart("joints");
        for (JointReport each : plan.report().joints()) {
            joint(each);
        }
        json.writeEndArray();
        json.writeArrayFieldStart("ways");
        for (WayReport way : plan.report().ways()) {
            way(way);
        }
        json.writeEndArray();
        json.writeArrayFieldStart("verdicts");
        for (WiringVerdict verdict : plan.verdicts()) {
            verdict(verdict);
        }
        json.writeEndArray();
        alternative("better", plan.advice().atHand());
        alternative("buyFirst", plan.advice().buyFirst());
        json.writeEndObject();
    }

    private void joint(JointReport each) throws IOException {
        json.writeStartObject();
        json.writeNumberField("number", each.joint().number());
        json.writeBooleanField("onThru", each.joint().onThru());
        json.writeStringField("from", each.joint().from().name());
        if (each.joint().cable().isPresent()) {
            json.writeObjectFieldStart("cable");
            json.writeStringField("id", each.joint().cable().get().cable().id());
            number("metres", each.joint().metres());
            json.writeEndObject();
        } else {
            json.writeNullField("cable");
        }
        json.writeStringField("to", each.joint().to().name());
        json.writeStringField("fit", word(WiringRules.worstAt(plan.verdicts(), each.joint())));
        number("usualDbu", each.usualDbu());
        number("usualDbv", Dbu.toDbv(each.usualDbu()));
        number("peakDbu", each.peakDbu());
        number("headroomDb", each.headroomDb());
        number("noiseDbu", each.noiseDbu());
        number("signalToNoiseDb", each.signalToNoiseDb());
        number("sourceOhms", each.sourceOhms());
        number("loadOhms", each.loadOhms());
        number("loadingDb", each.loadingDb());
        number("bassCornerHz", each.bassCornerHz());
        number("cableLevelDb", each.cableLevelDb());
        number("cableTrebleDb", each.cableTrebleDb());
        json.writeArrayFieldStart("response");
        for (int band = LOWEST_BAND; band <= HIGHEST_BAND; band++) {
            double hz = FIRST_BAND_HZ * Math.pow(10, band / 10.0);
            json.writeStartObject();
            number("frequencyHz", hz);
            number("levelDb", each.response().atHz(hz));
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private void way(WayReport way) throws IOException {
        json.writeStartObject();
        json.writeStringField("input", way.input().input().id());
        json.writeBooleanField("onThru", way.last().joint().onThru());
        json.writeBooleanField("phantom", way.input().phantom());
        number("gainDb", way.gainDb());
        number("suggestedGainDb", way.suggestedGainDb());
        boolean digital = way.input().input().digital();
        number("usualDbfs", digital ? OptionalDouble.of(way.usualDbfs()) : OptionalDouble.empty());
        number("peakDbfs", digital ? OptionalDouble.of(way.peakDbfs()) : OptionalDouble.empty());
        number("noiseDbfs", digital ? OptionalDouble.of(way.noiseDbfs()) : OptionalDouble.empty());
        number("signalToNoiseDb", way.signalToNoiseDb());
        number("bassCornerHz", way.bassCornerHz());
        json.writeEndObject();
    }

    private void verdict(WiringVerdict verdict) throws IOException {
        json.writeStartObject();
        json.writeStringField("fault", verdict.fault().id());
        json.writeStringField("fit", word(verdict.fit()));
        json.writeNumberField("joint", verdict.joint());
        json.writeStringField("evidence", sentences.say(WiringWords.evidence(verdict)));
        json.writeStringField("cure", sentences.say(WiringWords.cure(verdict)));
        json.writeEndObject();
    }

    private void alternative(String field, Optional<Alternative> alternative) throws IOException {
        if (alternative.isEmpty()) {
            json.writeNullField(field);
            return;
        }
        json.writeObjectFieldStart(field);
        json.writeStringField("chain", WiringWords.chain(alternative.get().report().connection().pickup().name(), alternative.get().report().connection().main()));
        json.writeStringField("fit", word(alternative.get().worst()));
        json.writeArrayFieldStart("buy");
        for (String name : alternative.get().toBuy()) {
            json.writeString(name);
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private void number(String field, OptionalDouble value) throws IOException {
        if (value.isPresent()) {
            number(field, value.getAsDouble());
        } else {
            json.writeNullField(field);
        }
    }

    private void number(String field, double value) throws IOException {
        if (Double.isFinite(value)) {
            json.writeNumberField(field, new BigDecimal(BigDecimal.valueOf(value).setScale(4, RoundingMode.HALF_EVEN).stripTrailingZeros().toPlainString()));
        } else {
            json.writeNullField(field);
        }
    }

    private static String word(Enum<?> kind) {
        return kind.name().toLowerCase(Locale.ROOT);
    }
}
