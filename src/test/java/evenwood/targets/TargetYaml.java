package evenwood.targets;

import evenwood.rig.ToneTarget;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Writes a target to the end of an instrument's preset file, in place of the one that stands there. */
final class TargetYaml {
    private static final String BEGINS = "\ntarget:\n";
    private static final Path FOLDER = Path.of("presets", "instruments");

    private TargetYaml() { }

    static void write(String presetId, ToneTarget target) throws IOException {
        Path file = FOLDER.resolve(presetId + ".yaml");
        String text = Files.readString(file);
        int at = text.indexOf(BEGINS);
        String kept = at < 0 ? text.stripTrailing() : text.substring(0, at);
        Files.writeString(file, kept + BEGINS + yaml(target));
    }

    private static String yaml(ToneTarget target) {
        StringBuilder text = new StringBuilder();
        text.append("  basis: ").append(target.basis().name().toLowerCase(Locale.ROOT).replace('_', '-')).append('\n');
        text.append("  sources: ").append(target.sources()).append('\n');
        text.append("  howMade: >-\n    ").append(target.howMade()).append('\n');
        text.append("  # third octaves from 50 Hz to 16 kHz, dB\n");
        text.append("  levelDb: ").append(bands(target.levelDb())).append('\n');
        text.append("  spreadDb: ").append(bands(target.spreadDb())).append('\n');
        text.append("  toleranceDb: ").append(bands(target.toleranceDb())).append('\n');
        text.append(target.notes().isEmpty() ? "  notes: []\n" : "  notes:\n");
        for (ToneTarget.NoteTone note : target.notes()) {
            text.append(String.format(Locale.ROOT, "    - { frequencyHz: %.2f, levelDb: %s }%n", note.frequencyHz(), bands(note.levelDb())));
        }
        return text.toString();
    }

    private static String bands(List<Double> values) {
        return values.stream().map(value -> String.format(Locale.ROOT, "%.1f", value).replace("-0.0", "0.0")).collect(Collectors.joining(", ", "[", "]"));
    }
}
