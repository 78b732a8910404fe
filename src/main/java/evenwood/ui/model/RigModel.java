package evenwood.ui.model;

import evenwood.coach.Move;
import evenwood.eq.RigInUse;
import evenwood.rig.Connection;
import evenwood.rig.ControlSet;
import evenwood.rig.LearnedControl;
import evenwood.rig.LearnedFile;
import evenwood.rig.PresetKind;
import evenwood.rig.PresetProblem;
import evenwood.rig.Presets;
import evenwood.rig.Rig;
import evenwood.rig.RigText;
import evenwood.rig.Setting;
import evenwood.rig.Tap;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What the player owns and where it stands, as chosen in the window and remembered.
 *
 * <p>Thread: the screen changes it; {@link #rig()} is read by any.
 */
public final class RigModel {
    /** What may be chosen, one of each but the boxes; the name is also the name it is remembered by. */
    public enum Part {
        INSTRUMENT(PresetKind.INSTRUMENTS, "octave-mandolin"), PICKUP(PresetKind.PICKUPS, "piezo-bridge"), BOX(PresetKind.BOXES, ""),
        INPUT(PresetKind.INPUTS, "interface-instrument"), CONTROLS(PresetKind.CONTROLS, "");

        private final PresetKind kind;
        private final String first;

        Part(PresetKind kind, String first) {
            this.kind = kind;
            this.first = first;
        }

        String memory() {
            return "rig." + name().toLowerCase(java.util.Locale.ROOT);
        }
    }

    private static final String FILE_NAME = "window";

    private final Presets presets;
    private final Choices choices;
    private final Map<String, ControlSet> controlSets = new HashMap<>();
    private final RememberedPositions positions;
    private final WiringModel wiring;
    private List<Setting> settings = List.of();
    private List<LearnedControl> learned = List.of();
    private volatile Optional<RigInUse> inUse = Optional.empty();

    public RigModel(Presets presets, Choices choices) {
        this.presets = presets;
        this.choices = choices;
        positions = new RememberedPositions(choices);
        wiring = new WiringModel(presets, choices, this);
        takeControls();
    }

    /** The ids there are; an empty one first where nothing may be chosen. */
    public List<String> ids(Part part) {
        List<String> ids = new ArrayList<>(presets.ids(part.kind));
        if (part == Part.BOX || part == Part.CONTROLS) {
            ids.add(0, "");
        }
        return ids;
    }

    public String chosen(Part part) {
        String id = choices.get(part.memory(), part.first);
        return ids(part).contains(id) ? id : part.first;
    }

    public void choose(Part part, String id) {
        choices.put(part.memory(), id);
        if (part == Part.CONTROLS) {
            takeControls();
            return;
        }
        if (part == Part.BOX) {
            wiring.forget();
        } else if (part != Part.INSTRUMENT) {
            wiring.follow();
        }
        build();
    }

    /** How all this is plugged in. */
    public WiringModel wiring() {
        return wiring;
    }

    /** The wiring page says what is plugged in. */
    void wired(String pickup, String box, String input) {
        choices.put(Part.PICKUP.memory(), pickup);
        choices.put(Part.BOX.memory(), box);
        choices.put(Part.INPUT.memory(), input);
        build();
    }

    public Tap tap() {
        try {
            return Tap.valueOf(choices.get("rig.tap", Tap.AMP_LINE_OUT.name()));
        } catch (IllegalArgumentException unknown) {
            return Tap.AMP_LINE_OUT;
        }
    }

    public void choose(Tap tap) {
        choices.put("rig.tap", tap.name());
        build();
    }

    /** What it is called in the player's language, or as its preset calls it. */
    public String name(Part part, String id, Words words) {
        if (id.isEmpty()) {
            return words.say("rig.none." + part.name().toLowerCase(java.util.Locale.ROOT));
        }
        String key = "preset." + part.kind.folder() + "." + id;
        return words.has(key) ? words.say(key) : switch (part) {
            case INSTRUMENT -> presets.instrument(id).name();
            case PICKUP -> presets.pickup(id).name();
            case BOX -> presets.box(id).name();
            case INPUT -> presets.input(id).name();
            case CONTROLS -> presets.controls(id).name();
        };
    }

    /** Where the chosen controls stand; empty without controls of one's own. */
    public List<Setting> settings() {
        return settings;
    }

    /** One control set anew. */
    public void set(Setting setting) {
        List<Setting> all = new ArrayList<>(settings);
        all.replaceAll(each -> each.control().name().equals(setting.control().name()) ? setting : each);
        settings = List.copyOf(all);
        positions.keep(chosen(Part.CONTROLS), setting);
        build();
    }

    /** The player turned what these moves say: from now on the controls stand there. */
    public void turned(List<Move> moves) {
        for (Move move : moves) {
            move.control().ownName().flatMap(name -> settings.stream().filter(each -> each.control().name().equalsIgnoreCase(name)).findFirst())
                .ifPresent(setting -> set(MadeMoves.afterwards(setting, move)));
        }
    }

    /** The instrument is always known; the controls only when chosen: then moves come in their marking. */
    public Optional<Rig> rig() {
        return inUse.map(RigInUse::rig);
    }

    /** The same with what was learned of its controls. */
    public Optional<RigInUse> inUse() {
        return inUse;
    }

    /** What was learned of the chosen controls. */
    public List<LearnedControl> learned() {
        return learned;
    }

    /** The file that the learned controls lie beside, as for {@code evenwood learn --rig}; one for each set of controls. */
    public Path file() {
        return choices.folder().resolve("rigs").resolve(chosen(Part.CONTROLS) + ".yaml");
    }

    /** Keeps it and uses it from now on, as does whatever takes the rig's file. @throws PresetProblem when it cannot be written */
    public void learn(LearnedControl control) {
        LearnedFile.keep(control, file(), controls(chosen(Part.CONTROLS)));
        takeControls();
    }

    /** From now on its marking is believed again. @throws PresetProblem when the file cannot be written */
    public void forget(String controlName) {
        LearnedFile.forget(controlName, file(), controls(chosen(Part.CONTROLS)));
        takeControls();
    }

    private void takeControls() {
        String id = chosen(Part.CONTROLS);
        settings = id.isEmpty() ? List.of() : controls(id).controls().stream().map(control -> positions.of(id, control)).toList();
        learned = id.isEmpty() ? List.of() : readLearned(id);
        build();
    }

    /** A file that is spoilt costs what was learned, never the rig; it is left as it is. */
    private List<LearnedControl> readLearned(String id) {
        try {
            return LearnedFile.read(file(), controls(id));
        } catch (PresetProblem spoilt) {
            return List.of();
        }
    }

    private ControlSet controls(String id) {
        return controlSets.computeIfAbsent(id, presets::controls);
    }

    private void build() {
        try {
            String id = chosen(Part.CONTROLS);
            ControlSet set = id.isEmpty() ? new ControlSet("", "", List.of(), "") : controls(id);
            inUse = Optional.of(RigInUse.of(new Rig("", presets.instrument(chosen(Part.INSTRUMENT)), tap(), set, settings, connection()), learned));
            keepFile();
        } catch (PresetProblem wrongFile) {
            inUse = Optional.empty();
        }
    }

    /** Once something was learned, the rig's own file stands beside it, for commands that take one; it only repeats what is remembered here. */
    private void keepFile() {
        try {
            if (!learned.isEmpty()) {
                Rig rig = inUse.orElseThrow().rig();
                RigText.write(new Rig(FILE_NAME, rig.instrument(), rig.tap(), rig.controls(), rig.settings(), rig.connection()), file());
            }
        } catch (PresetProblem unwritable) {
            // Nothing in the window needs it.
        }
    }

    /** As the player said it; or, once a part of it was chosen here, these parts with a usual cable between. What nobody chose is not judged. */
    private Optional<Connection> connection() {
        boolean chosen = Stream.of(Part.PICKUP, Part.BOX, Part.INPUT).anyMatch(part -> !choices.get(part.memory(), "").isEmpty());
        return wiring.said().or(() -> chosen ? Optional.of(wiring.connection()) : Optional.empty());
    }
}
