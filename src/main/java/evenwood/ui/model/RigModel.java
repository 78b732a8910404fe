package evenwood.ui.model;

import evenwood.coach.Move;
import evenwood.rig.Control;
import evenwood.rig.ControlSet;
import evenwood.rig.Dial;
import evenwood.rig.PresetKind;
import evenwood.rig.PresetProblem;
import evenwood.rig.Presets;
import evenwood.rig.Rig;
import evenwood.rig.Setting;
import evenwood.rig.Tap;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

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

    private static final String OFF = "off";

    private final Presets presets;
    private final Choices choices;
    private final Map<String, ControlSet> controlSets = new HashMap<>();
    private List<Setting> settings = List.of();
    private final WiringModel wiring;
    private volatile Optional<Rig> rig = Optional.empty();

    public RigModel(Presets presets, Choices choices) {
        this.presets = presets;
        this.choices = choices;
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
        remember(setting);
        build();
    }

    /** The player turned what these moves say: from now on the controls stand there. */
    public void turned(List<Move> moves) {
        for (Move move : moves) {
            move.control().ownName().flatMap(name -> settings.stream().filter(each -> each.control().name().equalsIgnoreCase(name)).findFirst())
                .ifPresent(setting -> set(afterwards(setting, move)));
        }
    }

    private static Setting afterwards(Setting setting, Move move) {
        Setting there = setting.control().switched() ? setting.switched(!move.to().map(OFF::equals).orElse(false)) : setting;
        Optional<Dial> gain = setting.control().gain();
        if (gain.isPresent() && move.toDb().isPresent()) {
            there = there.withGain(gain.get().settable(gain.get().positionOfDb(move.toDb().getAsDouble())));
        }
        Optional<Dial> frequency = setting.control().frequency();
        if (frequency.isPresent() && move.frequencyHz().isPresent()) {
            there = there.withFrequency(frequency.get().settable(frequency.get().positionOfHz(move.frequencyHz().getAsDouble())));
        }
        return there;
    }

    /** The instrument is always known; the controls only when chosen: then moves come in their marking. */
    public Optional<Rig> rig() {
        return rig;
    }

    private void takeControls() {
        String id = chosen(Part.CONTROLS);
        settings = id.isEmpty() ? List.of() : controls(id).controls().stream().map(this::remembered).toList();
        build();
    }

    private ControlSet controls(String id) {
        return controlSets.computeIfAbsent(id, presets::controls);
    }

    private void build() {
        try {
            String id = chosen(Part.CONTROLS);
            ControlSet set = id.isEmpty() ? new ControlSet("", "", List.of(), "") : controls(id);
            rig = Optional.of(new Rig("", presets.instrument(chosen(Part.INSTRUMENT)), tap(), set, settings, wiring.said()));
        } catch (PresetProblem wrongFile) {
            rig = Optional.empty();
        }
    }

    private Setting remembered(Control control) {
        Setting setting = Setting.neutral(control);
        String memory = memory(control);
        if (control.gain().isPresent()) {
            setting = setting.withGain(choices.number(memory + ".gain", setting.gain().getAsDouble()));
        }
        if (control.frequency().isPresent()) {
            setting = setting.withFrequency(choices.number(memory + ".frequency", setting.frequency().getAsDouble()));
        }
        return setting.switched(choices.number(memory + ".on", setting.on() ? 1 : 0) > 0);
    }

    private void remember(Setting setting) {
        String memory = memory(setting.control());
        setting.gain().ifPresent(position -> choices.put(memory + ".gain", position));
        setting.frequency().ifPresent(position -> choices.put(memory + ".frequency", position));
        choices.put(memory + ".on", setting.on() ? 1 : 0);
    }

    private String memory(Control control) {
        return "position." + chosen(Part.CONTROLS) + "." + control.name().replace(' ', '_');
    }
}
