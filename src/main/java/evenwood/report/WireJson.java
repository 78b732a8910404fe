package evenwood.report;

import evenwood.wiring.Alternative;
import evenwood.wiring.Dbu;
import evenwood.wiring.JointReport;
import evenwood.wiring.WayReport;
import evenwood.wiring.WiringRules;
import evenwood.wiring.WiringVerdict;
import java.util.List;
import java.util.stream.IntStream;

/** A connection plan as one JSON object, {@code evenwood.wire/1}; the fields stand in {@code docs/wire.schema.json}. */
public final class WireJson {
    private static final double FIRST_BAND_HZ = 1000;
    private static final int LOWEST_BAND = -17; // 20 Hz
    private static final int HIGHEST_BAND = 13; // 20 kHz
    private static final List<Double> BANDS_HZ = IntStream.rangeClosed(LOWEST_BAND, HIGHEST_BAND)
        .mapToObj(band -> FIRST_BAND_HZ * Math.pow(10, band / 10.0)).toList();

    private final WirePlan plan;
    private final Sentences sentences;

    private WireJson(WirePlan plan, Sentences sentences) {
        this.plan = plan;
        this.sentences = sentences;
    }

    public static String of(WirePlan plan, Sentences sentences) {
        return JsonFields.object("evenwood.wire/1", new WireJson(plan, sentences)::write);
    }

    private void write(JsonFields json) {
        json.text("rig", plan.rig().name())
            .text("instrument", plan.rig().instrument().id())
            .number("lowestHz", plan.report().lowestHz())
            .text("pickup", plan.report().connection().pickup().id())
            .text("fit", JsonFields.word(WiringRules.worst(plan.verdicts())))
            .parts("joints", plan.report().joints(), this::joint)
            .parts("ways", plan.report().ways(), WireJson::way)
            .parts("verdicts", plan.verdicts(), this::verdict)
            .part("better", plan.advice().atHand(), WireJson::alternative)
            .part("buyFirst", plan.advice().buyFirst(), WireJson::alternative);
    }

    private void joint(JsonFields json, JointReport each) {
        json.count("number", each.joint().number())
            .flag("onThru", each.joint().onThru())
            .text("from", each.joint().from().name())
            .part("cable", each.joint().cable(), (part, run) -> part.text("id", run.cable().id()).number("metres", each.joint().metres()))
            .text("to", each.joint().to().name())
            .text("fit", JsonFields.word(WiringRules.worstAt(plan.verdicts(), each.joint())))
            .number("usualDbu", each.usualDbu())
            .number("usualDbv", Dbu.toDbv(each.usualDbu()))
            .number("peakDbu", each.peakDbu())
            .number("headroomDb", each.headroomDb())
            .number("noiseDbu", each.noiseDbu())
            .number("signalToNoiseDb", each.signalToNoiseDb())
            .number("sourceOhms", each.sourceOhms())
            .number("loadOhms", each.loadOhms())
            .number("loadingDb", each.loadingDb())
            .number("bassCornerHz", each.bassCornerHz())
            .number("cableLevelDb", each.cableLevelDb())
            .number("cableTrebleDb", each.cableTrebleDb())
            .parts("response", BANDS_HZ, (part, hz) -> part.number("frequencyHz", hz).number("levelDb", each.response().atHz(hz)));
    }

    private static void way(JsonFields json, WayReport way) {
        boolean digital = way.input().input().digital();
        json.text("input", way.input().input().id())
            .flag("onThru", way.last().joint().onThru())
            .flag("phantom", way.input().phantom())
            .number("gainDb", way.gainDb())
            .number("suggestedGainDb", way.suggestedGainDb())
            .number("usualDbfs", digital ? way.usualDbfs() : Double.NEGATIVE_INFINITY)
            .number("peakDbfs", digital ? way.peakDbfs() : Double.NEGATIVE_INFINITY)
            .number("noiseDbfs", digital ? way.noiseDbfs() : Double.NEGATIVE_INFINITY)
            .number("signalToNoiseDb", way.signalToNoiseDb())
            .number("bassCornerHz", way.bassCornerHz());
    }

    private void verdict(JsonFields json, WiringVerdict verdict) {
        json.text("fault", verdict.fault().id())
            .text("fit", JsonFields.word(verdict.fit()))
            .count("joint", verdict.joint())
            .text("evidence", sentences.say(WiringWords.evidence(verdict)))
            .text("cure", sentences.say(WiringWords.cure(verdict)));
    }

    private static void alternative(JsonFields json, Alternative alternative) {
        json.text("chain", WiringWords.chain(alternative.report().connection().pickup().name(), alternative.report().connection().main()))
            .text("fit", JsonFields.word(alternative.worst()))
            .texts("buy", alternative.toBuy());
    }
}
