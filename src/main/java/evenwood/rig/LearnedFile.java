package evenwood.rig;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * The learned controls of a rig: {@code kitchen.learned.yaml} beside {@code kitchen.yaml}, so that what the player wrote
 * stays as it was written. Its JSON Schema is {@code presets/schema/learned.schema.json}.
 */
public final class LearnedFile {
    private static final double MOST_DB = 400;
    private static final double UNKNOWN_DEVIATION_DB = 100;

    private LearnedFile() { }

    public static Path beside(Path rigFile) {
        String name = rigFile.getFileName().toString();
        return rigFile.resolveSibling(name.replaceFirst("\\.ya?ml$", "") + ".learned.yaml");
    }

    /** What was learned so far; nothing where there is no file. @throws PresetProblem naming file, line and field */
    public static List<LearnedControl> read(Path rigFile, ControlSet controls) {
        Path file = beside(rigFile);
        if (!Files.exists(file)) {
            return List.of();
        }
        try {
            YamlFields fields = YamlFields.of(file.toString(), Files.readString(file));
            List<LearnedControl> learned = new ArrayList<>();
            for (YamlFields each : fields.parts("learned")) {
                learned.add(control(each, controls));
            }
            fields.nothingElse();
            return learned;
        } catch (IOException problem) {
            throw new PresetProblem("rig: " + file + " cannot be read as text (" + problem.getMessage() + "); check the file and its rights");
        }
    }

    private static LearnedControl control(YamlFields fields, ControlSet controls) {
        String name = fields.text("control");
        Control control = controls.control(name).orElseThrow(() -> fields.wrong("control", name, "the rig's controls are "
            + controls.controls().stream().map(Control::name).collect(Collectors.joining(", "))));
        LearnedControl.How how = fields.choice("how", LearnedControl.How.class);
        List<LearnedControl.Curve> curves = new ArrayList<>();
        for (YamlFields curve : fields.parts("curves")) {
            curves.add(new LearnedControl.Curve(setting(curve.part("at"), control), row(curve, "levelDb", -MOST_DB), row(curve, "deviationDb", 0),
                curve.optionalNumber("cleanUpToDbfs", -MOST_DB, MOST_DB, "dBFS")));
            curve.nothingElse();
        }
        if (curves.size() < 2) {
            throw fields.wrong("curves", curves.size() + " curves", "at least two are needed");
        }
        List<LearnedControl.Answer> answers = new ArrayList<>();
        for (YamlFields answer : fields.has("answers") ? fields.parts("answers") : List.<YamlFields>of()) {
            answers.add(answer(answer, control));
        }
        fields.nothingElse();
        return new LearnedControl(control.name(), how, curves, answers);
    }

    private static List<Double> row(YamlFields fields, String field, double least) {
        List<Double> row = fields.numbers(field, least, MOST_DB, "dB");
        if (row.size() != LearnedControl.FREQUENCIES_HZ.size()) {
            throw fields.wrong(field, row.size() + " numbers", LearnedControl.FREQUENCIES_HZ.size() + " are needed, twelfths of an octave from 20 Hz to 20 kHz");
        }
        return row;
    }

    private static LearnedControl.Answer answer(YamlFields fields, Control control) {
        Setting from = setting(fields.part("from"), control);
        Setting to = setting(fields.part("to"), control);
        List<Double> centres = fields.numbers("centreHz", 1, 100_000, "Hz");
        List<Double> changes = fields.numbers("changeDb", -MOST_DB, MOST_DB, "dB");
        List<Double> deviations = fields.numbers("deviationDb", 0, UNKNOWN_DEVIATION_DB, "dB");
        if (centres.size() != changes.size() || centres.size() != deviations.size()) {
            throw fields.wrong("changeDb", changes.size() + " numbers", "as many as centreHz are needed: " + centres.size());
        }
        fields.nothingElse();
        List<LearnedControl.Band> bands = new ArrayList<>();
        for (int i = 0; i < centres.size(); i++) {
            bands.add(new LearnedControl.Band(centres.get(i), changes.get(i), deviations.get(i)));
        }
        return new LearnedControl.Answer(from, to, bands);
    }

    private static Setting setting(YamlFields fields, Control control) {
        Setting setting = new Setting(control, fields.flag("on", true), Setting.position(fields, "gain", control.gain()),
            Setting.position(fields, "frequency", control.frequency()));
        fields.nothingElse();
        return setting;
    }

    /** Keeps it in place of what was known of that control. @throws PresetProblem when it cannot be written */
    public static void keep(LearnedControl newest, Path rigFile, ControlSet controls) {
        Path file = beside(rigFile);
        List<LearnedControl> all = new ArrayList<>(read(rigFile, controls));
        all.removeIf(each -> each.control().equals(newest.control()));
        all.add(newest);
        WholeFile.write(file, text(all));
    }

    /** What was learned of that control is no longer known. @throws PresetProblem when it cannot be written */
    public static void forget(String control, Path rigFile, ControlSet controls) {
        List<LearnedControl> all = new ArrayList<>(read(rigFile, controls));
        if (all.removeIf(each -> each.control().equals(control))) {
            WholeFile.write(beside(rigFile), text(all));
        }
    }

    private static String text(List<LearnedControl> all) {
        StringBuilder text = new StringBuilder("# What the rig's controls really do, as evenwood learn heard it. Remove a control to forget it.\n");
        text.append(all.isEmpty() ? "learned: []\n" : "learned:\n");
        for (LearnedControl control : all) {
            text.append("  - control: ").append(RigText.quoted(control.control())).append('\n');
            text.append("    how: ").append(control.how().name().toLowerCase(Locale.ROOT)).append('\n');
            text.append("    curves:\n");
            for (LearnedControl.Curve curve : control.curves()) {
                text.append("      - at: ").append(RigText.place(curve.at())).append('\n');
                text.append("        levelDb: ").append(row(curve.levelDb())).append('\n');
                text.append("        deviationDb: ").append(row(curve.deviationDb())).append('\n');
                curve.cleanUpToDbfs().ifPresent(dbfs -> text.append(String.format(Locale.ROOT, "        cleanUpToDbfs: %.1f%n", dbfs)));
            }
            text.append(control.answers().isEmpty() ? "" : "    answers:\n");
            for (LearnedControl.Answer answer : control.answers()) {
                text.append("      - from: ").append(RigText.place(answer.from())).append('\n');
                text.append("        to: ").append(RigText.place(answer.to())).append('\n');
                text.append("        centreHz: ").append(row(answer.bands().stream().map(LearnedControl.Band::centreHz).toList())).append('\n');
                text.append("        changeDb: ").append(row(answer.bands().stream().map(LearnedControl.Band::changeDb).toList())).append('\n');
                text.append("        deviationDb: ").append(row(answer.bands().stream().map(LearnedControl.Band::deviationDb).toList())).append('\n');
            }
        }
        return text.toString();
    }

    private static String row(List<Double> numbers) {
        return numbers.stream().map(number -> String.format(Locale.ROOT, "%.3f", number)).collect(Collectors.joining(", ", "[", "]"));
    }
}
