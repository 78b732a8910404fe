package evenwood.targets;

import evenwood.rig.Instrument;
import evenwood.rig.ToneTarget;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Targets made as the shipped ones are, but without the source that is to be judged. */
public final class HeldOutTargets {
    /** Only these, a pattern, where an evaluation of all takes too long: {@code -Devaluation.options=-Dtargets.presets=cello|double-bass}. */
    private static final String PRESETS = System.getProperty("targets.presets", ".*");

    private final Map<TargetVoices, SourceTone> tones = new LinkedHashMap<>();

    public HeldOutTargets() {
        TargetVoices.independent().parallelStream().filter(voice -> voice.preset().matches(PRESETS)).map(SourceTone::of).toList().forEach(tone -> tones.put(tone.voice(), tone));
    }

    /** Voices whose instrument has another source played the same way. */
    public List<TargetVoices> voices() {
        return tones.keySet().stream().filter(voice -> !others(voice).isEmpty()).toList();
    }

    /** The voice's instrument, its target made of the other sources alone. */
    public Instrument without(TargetVoices voice) {
        List<List<ToneTarget.NoteTone>> others = others(voice).stream().map(SourceTone::notes).toList();
        return TargetMaker.instrument(voice.preset(), TargetMaker.target(others, ToneTarget.Basis.OWN_SOUND, "all but " + voice));
    }

    private List<SourceTone> others(TargetVoices voice) {
        return tones.values().stream().filter(tone -> tone.voice().played() == voice.played() && tone.voice().preset().equals(voice.preset())
            && !tone.voice().equals(voice)).toList();
    }
}
