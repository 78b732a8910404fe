package evenwood.targets;

import evenwood.rig.PresetKind;
import evenwood.rig.Presets;
import evenwood.rig.ToneTarget;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * Makes the targets of all instrument presets anew from packaged recordings: {@code mvn -q -Ptargets verify}.
 *
 * <p>Needs fluidsynth, sox, ffmpeg, npm and the packages of {@link evenwood.takes.SampledBank}. Writes the presets, the
 * pictures and the table of {@code docs/targets.md}; what was rendered stays in {@code target/takes}.
 */
public final class TargetsRun {
    private static final Path PICTURES = Path.of("docs", "targets");
    private static final Path PAGE = Path.of("docs", "targets.md");
    private static final String TABLE_BEGINS = "<!-- targets: start -->\n";
    private static final String TABLE_ENDS = "<!-- targets: end -->";

    private TargetsRun() { }

    public static void main(String[] args) throws IOException {
        Map<String, ToneTarget> targets = new TreeMap<>();
        for (Map.Entry<String, List<TargetVoices>> each : byPreset().entrySet()) {
            targets.put(each.getKey(), fromVoices(each.getKey(), each.getValue()));
        }
        targets.put("cajon", fromDrums());
        for (String id : new Presets(Path.of("no-folder-of-a-player")).ids(PresetKind.INSTRUMENTS)) {
            TargetYaml.write(id, targets.get(id));
        }
        writePage(targets);
    }

    /** Independent voices of each preset that has any. */
    public static Map<String, List<TargetVoices>> byPreset() {
        return TargetVoices.independent().stream().collect(Collectors.groupingBy(TargetVoices::preset, LinkedHashMap::new, Collectors.toList()));
    }

    private static ToneTarget fromVoices(String preset, List<TargetVoices> voices) throws IOException {
        List<SourceTone> tones = voices.stream().map(SourceTone::of).toList();
        boolean relatives = voices.stream().anyMatch(TargetVoices::relative);
        String how = (relatives ? "Sounds of relatives played in its own range, because no package has the instrument: "
            : "Mean of independent sets of recordings: ") + named(voices)
            + ". Every note of the range, usual and hard, and phrases high, low, soft, hard and in chords. Spread: one law for all instruments. See docs/targets.md.";
        ToneTarget target = TargetMaker.target(tones.stream().map(SourceTone::notes).toList(),
            relatives ? ToneTarget.Basis.RELATIVES : ToneTarget.Basis.OWN_SOUND, how);
        Map<String, List<Double>> lines = new LinkedHashMap<>();
        tones.forEach(tone -> lines.put(tone.voice().toString(), TargetMaker.usualDb(tone.notes())));
        TargetPicture.write(PICTURES.resolve(preset + ".svg"), preset, target, lines);
        return target;
    }

    private static ToneTarget fromDrums() throws IOException {
        List<List<Double>> sources = Cajon.sources();
        ToneTarget target = TargetMaker.unpitched(sources, ToneTarget.Basis.RELATIVES,
            "Strokes of relatives, because no package has the instrument: a hand drum's bass and rim strokes, and a low tom with a snare drum "
                + "(Debian's sonic-pi-samples). Take it as a rough guide. See docs/targets.md.");
        TargetPicture.write(PICTURES.resolve("cajon.svg"), "cajon", target, Map.of("hand drum", sources.get(0), "tom and snare", sources.get(1)));
        return target;
    }

    private static String named(List<TargetVoices> voices) {
        return voices.stream().map(voice -> voice.voice().bank().debianPackage() + " " + voice.voice().midiBank() + "/" + voice.voice().program()
            + (voice.preset().equals("double-bass") ? " " + voice.played().playing().name().toLowerCase(Locale.ROOT) : "")).collect(Collectors.joining(", "));
    }

    private static void writePage(Map<String, ToneTarget> targets) throws IOException {
        List<String> rows = new ArrayList<>();
        rows.add("| instrument | basis | independent sets | picture |\n|---|---|---|---|\n");
        targets.forEach((id, target) -> rows.add("| " + id + " | " + target.basis().name().toLowerCase(Locale.ROOT).replace('_', ' ') + " | "
            + target.sources() + " | ![" + id + "](targets/" + id + ".svg) |\n"));
        String page = Files.readString(PAGE);
        int from = page.indexOf(TABLE_BEGINS) + TABLE_BEGINS.length();
        Files.writeString(PAGE, page.substring(0, from) + String.join("", rows) + page.substring(page.indexOf(TABLE_ENDS)));
    }
}
