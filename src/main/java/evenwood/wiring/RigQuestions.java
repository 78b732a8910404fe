package evenwood.wiring;

import evenwood.rig.Box;
import evenwood.rig.Input;
import evenwood.rig.Power;
import evenwood.rig.PresetKind;
import evenwood.rig.Presets;
import evenwood.rig.SignalKind;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Builds a rig by questions a player can answer looking at what stands there.
 *
 * <p>The questions follow the cable from the instrument to the input. Given the answers so far, {@link #next} says what to ask;
 * when it has nothing more to ask, {@link #rig} is the text of a rig file. Nothing is kept between calls, so a window may go
 * back by dropping answers.
 */
public final class RigQuestions {
    private static final int MOST_BOXES = 3;

    private final Presets presets;

    public RigQuestions(Presets presets) {
        this.presets = presets;
    }

    /** Empty when everything was answered. */
    public Optional<Question> next(List<String> answers) {
        Run run = new Run(answers);
        run.all();
        return Optional.ofNullable(run.pending);
    }

    /** The rig file. */
    public String rig(List<String> answers) {
        Run run = new Run(answers);
        String text = run.all();
        if (run.pending != null) {
            throw new IllegalStateException("rig questions: " + answers.size() + " answers, but " + run.pending.key() + " is still to be asked");
        }
        return text;
    }

    /** One way through the questions with the answers there are; after the first one missing it only runs to its end. */
    private final class Run {
        private final Iterator<String> answers;
        private Question pending;
        private int earthed;
        private Optional<Box> thru = Optional.empty();

        private Run(List<String> answers) {
            this.answers = answers.iterator();
        }

        private String all() {
            String name = ask(new Question("ask.name", List.of(), Question.Kind.TEXT, List.of()));
            String instrument = choice("ask.instrument", options(PresetKind.INSTRUMENTS, id -> presets.instrument(id).name()));
            String pickup = choice("ask.pickup", options(PresetKind.PICKUPS, id -> presets.pickup(id).name()));
            StringBuilder chain = new StringBuilder();
            String input = line(chain);
            String second = thru.isPresent() && yes("ask.thru", thru.get().name()) ? thruLine() : "";
            String outlet = earthed > 1 ? ask(question("ask.same-outlet", Question.Kind.YES_NO_IF_KNOWN)) : "";
            String owned = ask(new Question("ask.owned", List.of(), Question.Kind.MANY, options(PresetKind.BOXES, id -> presets.box(id).name())));
            if (pending != null) {
                return "";
            }
            Input.Device device = presets.input(inputId(input)).device();
            return "name: \"" + name.replace("\\", "").replace("\"", "'") + "\"\ninstrument: " + instrument + "\ntap: " + tap(device, chain.toString())
                + "\ncontrols: " + controls(device) + "\nwiring:\n  pickup: " + pickup + "\n  chain:" + (chain.length() == 0 ? " []" : "\n" + chain.toString().stripTrailing())
                + "\n  input: " + input + second + (outlet.isBlank() ? "" : "\n  sameOutlet: " + Question.yes(outlet)) + ownedBoxes(owned) + "\n";
        }

        /** From here to an input; the cable and boxes go into the chain. */
        private String line(StringBuilder chain) {
            for (int boxes = 0; pending == null; boxes++) {
                List<Question.Option> cables = options(PresetKind.CABLES, id -> presets.cable(id).name());
                cables.add(0, new Question.Option("none", "none, they sit together"));
                String cable = choice(boxes == 0 ? "ask.cable" : "ask.next-cable", cables);
                if (!cable.equals("none")) {
                    String metres = ask(question("ask.metres", Question.Kind.NUMBER));
                    chain.append("    - { cable: ").append(cable).append(", metres: ").append(plain(metres)).append(" }\n");
                }
                List<Question.Option> targets = options(PresetKind.INPUTS, id -> presets.input(id).name());
                if (boxes < MOST_BOXES) {
                    targets.addAll(0, options(PresetKind.BOXES, id -> presets.box(id).name()));
                }
                String target = choice("ask.into", targets);
                if (pending == null && presets.ids(PresetKind.BOXES).contains(target) && boxes < MOST_BOXES) {
                    chain.append(box(presets.box(target)));
                } else if (pending == null) {
                    return input(target);
                }
            }
            return "";
        }

        private String box(Box box) {
            earthed += box.earthed() ? 1 : 0;
            if (box.thru() && thru.isEmpty()) {
                thru = Optional.of(box);
            }
            StringBuilder text = new StringBuilder("    - { box: ").append(box.id());
            if (box.power() == Power.BATTERY || box.power() == Power.BATTERY_OR_PHANTOM) {
                List<Question.Option> powers = new ArrayList<>(List.of(new Question.Option("battery", "a battery that is not flat")));
                if (box.power() == Power.BATTERY_OR_PHANTOM) {
                    powers.add(new Question.Option("phantom", "phantom power from the mixer or interface"));
                }
                powers.add(new Question.Option("none", "nothing"));
                text.append(", power: ").append(choice("ask.power", powers, box.name()));
            }
            if (box.gain().mostDb() > box.gain().leastDb()) {
                String gain = ask(question("ask.box-gain", Question.Kind.NUMBER_IF_KNOWN, box.name(), box.gain().leastDb(), box.gain().mostDb()));
                text.append(gain.isBlank() ? "" : ", gainDb: " + box.gain().nearest(Question.number(gain)));
            }
            if (!box.padsDb().isEmpty()) {
                List<Question.Option> pads = new ArrayList<>(List.of(new Question.Option("none", "no pad")));
                box.padsDb().forEach(pad -> pads.add(new Question.Option("-" + Math.round(pad), "−" + Math.round(pad) + " dB")));
                String pad = choice("ask.pad", pads, box.name());
                text.append(pad.startsWith("-") ? ", padDb: " + pad.substring(1) : "");
            }
            if (box.groundLift() && yes("ask.lift", box.name())) {
                text.append(", groundLift: true");
            }
            return text.append(" }\n").toString();
        }

        private String input(String id) {
            Input input = presets.input(id);
            earthed += input.earthed() ? 1 : 0;
            StringBuilder text = new StringBuilder("{ id: ").append(id);
            if (input.accepts() != SignalKind.SPEAKER) {
                String gain = ask(question("ask.gain", Question.Kind.NUMBER_IF_KNOWN, input.gain().leastDb(), input.gain().mostDb()));
                text.append(gain.isBlank() ? "" : ", gainDb: " + input.gain().nearest(Question.number(gain)));
            }
            if (input.phantomVolts() > 0 && yes("ask.phantom", input.name())) {
                text.append(", phantom: true");
            }
            return text.append(" }").toString();
        }

        /** A second way is only a cable and an input. */
        private String thruLine() {
            String cable = choice("ask.next-cable", options(PresetKind.CABLES, id -> presets.cable(id).name()));
            String metres = ask(question("ask.metres", Question.Kind.NUMBER));
            String target = choice("ask.into", options(PresetKind.INPUTS, id -> presets.input(id).name()));
            return pending != null ? "" : "\n  thru:\n    chain: [{ cable: " + cable + ", metres: " + plain(metres) + " }]\n    input: " + input(target);
        }

        private boolean yes(String key, Object... figures) {
            return Question.yes(ask(question(key, Question.Kind.YES_NO, figures)));
        }

        private String choice(String key, List<Question.Option> options, Object... figures) {
            Question question = new Question(key, List.of(figures), Question.Kind.ONE, options);
            return question.chosen(ask(question));
        }

        private String ask(Question question) {
            if (pending == null && answers.hasNext()) {
                String answer = answers.next();
                if (question.accepts(answer)) {
                    return answer.trim();
                }
            }
            pending = pending == null ? question : pending;
            return "";
        }

        private String ownedBoxes(String owned) {
            Question question = new Question("ask.owned", List.of(), Question.Kind.MANY, options(PresetKind.BOXES, id -> presets.box(id).name()));
            List<String> ids = Stream.of(owned.split(",")).map(question::chosen).filter(id -> !id.isEmpty()).distinct().toList();
            return ids.isEmpty() ? "" : "\n  owned: { boxes: [" + String.join(", ", ids) + "] }";
        }
    }

    private static Question question(String key, Question.Kind kind, Object... figures) {
        return new Question(key, List.of(figures), kind, List.of());
    }

    private List<Question.Option> options(PresetKind kind, java.util.function.UnaryOperator<String> name) {
        List<Question.Option> options = new ArrayList<>();
        presets.ids(kind).forEach(id -> options.add(new Question.Option(id, name.apply(id))));
        return options;
    }

    private static String inputId(String input) {
        return input.replaceAll("\\{ id: ([a-z0-9-]+).*", "$1");
    }

    private static String tap(Input.Device device, String chain) {
        return switch (device) {
            case MIXER -> "mixer-direct-out";
            case AMP, CABINET -> "amp-line-out";
            case INTERFACE, RECORDER -> chain.contains("amp") ? "amp-line-out" : "pickup";
        };
    }

    private static String controls(Input.Device device) {
        return switch (device) {
            case MIXER -> "channel-strip";
            case AMP, CABINET -> "amp-bass-mid-treble";
            case INTERFACE, RECORDER -> "parametric";
        };
    }

    private static String plain(String number) {
        double value = Math.min(500, Question.number(number));
        return value == Math.rint(value) ? String.valueOf((long) value) : String.format(Locale.ROOT, "%.2f", value);
    }
}
