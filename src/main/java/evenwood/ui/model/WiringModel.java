package evenwood.ui.model;

import evenwood.rig.Box;
import evenwood.rig.Cable;
import evenwood.rig.CableRun;
import evenwood.rig.Connection;
import evenwood.rig.ConnectionText;
import evenwood.rig.Line;
import evenwood.rig.Link;
import evenwood.rig.PluggedBox;
import evenwood.rig.PluggedInput;
import evenwood.rig.PresetKind;
import evenwood.rig.PresetProblem;
import evenwood.rig.Presets;
import evenwood.rig.Rig;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How the player's instrument is plugged in, as said on the page and remembered; until then what the rig page suggests.
 *
 * <p>A cable belongs to the thing it comes out of: a box that is moved takes along the cable behind it.
 * <p>Thread: the screen's.
 */
public final class WiringModel {
    private static final String MEMORY = "wiring.chain";
    private static final String GUESSED_CABLE = "instrument-cable";
    private static final double GUESSED_METRES = 3;

    private final Presets presets;
    private final Choices choices;
    private final RigModel rig;
    private String readText = "";
    private Optional<Connection> read = Optional.empty();

    WiringModel(Presets presets, Choices choices, RigModel rig) {
        this.presets = presets;
        this.choices = choices;
        this.rig = rig;
    }

    public Presets presets() {
        return presets;
    }

    /** What the player said; empty before, or when it no longer can be read. */
    public Optional<Connection> said() {
        String text = choices.get(MEMORY, "");
        if (!text.equals(readText)) {
            readText = text;
            try {
                read = text.isEmpty() ? Optional.empty() : Optional.of(ConnectionText.read(text, presets));
            } catch (PresetProblem unreadable) {
                read = Optional.empty();
            }
        }
        return read;
    }

    /** What the player said, or the parts of the rig page with a usual cable between. */
    public Connection connection() {
        return said().orElseGet(this::guessed);
    }

    private Connection guessed() {
        String box = rig.chosen(RigModel.Part.BOX);
        String cable = "{ cable: " + GUESSED_CABLE + ", metres: " + GUESSED_METRES + " }";
        return ConnectionText.read("pickup: " + rig.chosen(RigModel.Part.PICKUP) + "\nchain: [" + cable
            + (box.isEmpty() ? "" : ", { box: " + box + " }, " + cable) + "]\ninput: { id: " + rig.chosen(RigModel.Part.INPUT) + " }\n", presets);
    }

    public void take(Scenario scenario) {
        take(ConnectionText.read(scenario.wiring(rig.chosen(RigModel.Part.PICKUP)), presets));
    }

    /** A rig file's text, as the questions end in one. */
    public void takeRig(String rigText) {
        Rig asked = ConnectionText.readRig(rigText, presets);
        rig.choose(RigModel.Part.INSTRUMENT, asked.instrument().id());
        rig.choose(asked.tap());
        asked.connection().ifPresent(this::take);
    }

    public void take(Connection connection) {
        choices.put(MEMORY, ConnectionText.of(connection));
        rig.wired(connection.pickup().id(), connection.main().boxes().stream().findFirst().map(each -> each.box().id()).orElse(""),
            connection.main().input().input().id());
    }

    /** Another pickup or input was chosen on the rig page. */
    void follow() {
        said().ifPresent(known -> {
            Line main = known.main();
            String input = rig.chosen(RigModel.Part.INPUT);
            PluggedInput plugged = main.input().input().id().equals(input) ? main.input()
                : new PluggedInput(presets.input(input), java.util.OptionalDouble.empty(), false);
            Connection next = new Connection(presets.pickup(rig.chosen(RigModel.Part.PICKUP)), new Line(main.links(), plugged), known.thru(),
                known.sameOutlet(), known.owned());
            choices.put(MEMORY, ConnectionText.of(next));
        });
    }

    /** Another box was chosen on the rig page: the chain is guessed anew. */
    void forget() {
        choices.put(MEMORY, "");
    }

    /** The chain's boxes in order. */
    public List<PluggedBox> boxes() {
        return connection().main().boxes();
    }

    /** The cable out of the pickup (0) or out of a box (1 and on). */
    public Optional<CableRun> cableOutOf(int thing) {
        return Things.of(connection().main()).cables.get(thing);
    }

    /** One box so many places on; at the ends it stays. @return where it is now */
    public int move(int box, int by) {
        Things things = Things.of(connection().main());
        int to = Math.max(0, Math.min(things.boxes.size() - 1, box + by));
        if (to != box) {
            PluggedBox moved = things.boxes.remove(box);
            Optional<CableRun> cable = things.cables.remove(box + 1);
            things.boxes.add(to, moved);
            things.cables.add(to + 1, cable);
            put(things);
        }
        return to;
    }

    /** A new box before the input, with a cable that suits it. @return where it is */
    public int add(String boxId) {
        Box box = presets.box(boxId);
        Things things = Things.of(connection().main());
        things.boxes.add(PluggedBox.of(box));
        things.cables.add(Optional.of(new CableRun(presets.cable(box.outputBalanced() ? "microphone-cable" : GUESSED_CABLE), GUESSED_METRES)));
        put(things);
        return things.boxes.size() - 1;
    }

    public void remove(int box) {
        Things things = Things.of(connection().main());
        things.boxes.remove(box);
        things.cables.remove(box + 1);
        put(things);
    }

    /** The same box, standing otherwise. */
    public void set(int box, PluggedBox plugged) {
        Things things = Things.of(connection().main());
        things.boxes.set(box, plugged);
        put(things);
    }

    /** Another cable out of the pickup (0) or a box (1 and on); empty when both sit together. */
    public void cable(int thing, Optional<CableRun> cable) {
        Things things = Things.of(connection().main());
        things.cables.set(thing, cable);
        put(things);
    }

    public void input(PluggedInput input) {
        Connection now = connection();
        take(new Connection(now.pickup(), new Line(now.main().links(), input), now.thru(), now.sameOutlet(), now.owned()));
    }

    public void pickup(String id) {
        Connection now = connection();
        take(new Connection(presets.pickup(id), now.main(), now.thru(), now.sameOutlet(), now.owned()));
    }

    public Optional<CableRun> cable(String id, double metres) {
        Cable cable = id.isEmpty() ? null : presets.cable(id);
        return Optional.ofNullable(cable).map(each -> new CableRun(each, Math.max(0, Math.min(500, metres))));
    }

    public List<String> ids(PresetKind kind) {
        return presets.ids(kind);
    }

    private void put(Things things) {
        Connection now = connection();
        Line main = new Line(things.links(), now.main().input());
        take(new Connection(now.pickup(), main, main.boxWithThru().isEmpty() ? Optional.empty() : now.thru(), now.sameOutlet(), now.owned()));
    }

    /** Boxes, and the cable out of the pickup and out of each box. */
    private record Things(List<PluggedBox> boxes, List<Optional<CableRun>> cables) {
        static Things of(Line line) {
            List<PluggedBox> boxes = new ArrayList<>();
            List<Optional<CableRun>> cables = new ArrayList<>(List.of(Optional.empty()));
            for (Link link : line.links()) {
                if (link instanceof CableRun run) {
                    cables.set(cables.size() - 1, Optional.of(run));
                } else {
                    boxes.add((PluggedBox) link);
                    cables.add(Optional.empty());
                }
            }
            return new Things(boxes, cables);
        }

        List<Link> links() {
            List<Link> links = new ArrayList<>();
            for (int i = 0; i < cables.size(); i++) {
                if (i > 0) {
                    links.add(boxes.get(i - 1));
                }
                cables.get(i).ifPresent(links::add);
            }
            return links;
        }
    }
}
