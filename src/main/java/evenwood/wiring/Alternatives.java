package evenwood.wiring;

import evenwood.rig.Box;
import evenwood.rig.Cable;
import evenwood.rig.CableRun;
import evenwood.rig.Connection;
import evenwood.rig.Gear;
import evenwood.rig.Input;
import evenwood.rig.Line;
import evenwood.rig.Link;
import evenwood.rig.PluggedBox;
import evenwood.rig.PluggedInput;
import evenwood.rig.Power;
import evenwood.rig.SignalKind;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Looks for a better way to plug in: every sequence of at most two boxes at hand into every input at hand, and the same with one
 * box more.
 *
 * <p>Each is computed and judged like the player's own; switches are set as each box wants them. A chain with a power amplifier
 * keeps its boxes: there only cables and switches are looked at.
 */
public final class Alternatives {
    /** Fewer points apart than this are the same to a player. */
    private static final double BETTER_BY_POINTS = 5;

    private static final double AS_IT_STANDS = -1;

    private final ChainReport now;
    private final Connection connection;
    private final Gear shop;
    private final List<Box> boxes;
    private final List<Input> inputs;
    private final CableChoice cables;

    private Alternatives(ChainReport now, Gear shop) {
        this.now = now;
        this.connection = now.connection();
        this.shop = shop;
        Gear owned = connection.owned();
        boxes = distinct(connection.main().boxes().stream().map(PluggedBox::box).toList(), owned.boxes(), Box::id);
        inputs = distinct(List.of(connection.main().input().input()), owned.inputs(), Input::id);
        List<Cable> used = connection.main().links().stream().filter(CableRun.class::isInstance).map(link -> ((CableRun) link).cable()).toList();
        cables = new CableChoice(distinct(used, owned.cables(), Cable::id), shop.cables(), connection.main());
    }

    /** @param shop what could be bought; its inputs are not looked at */
    public static WiringAdvice of(ChainReport now, Gear shop) {
        Alternative own = Alternative.of(now, List.of());
        if (own.worst() == Fit.RIGHT) {
            return WiringAdvice.NONE;
        }
        Alternatives search = new Alternatives(now, shop);
        List<Alternative> found = search.all();
        Optional<Alternative> atHand = best(found.stream().filter(each -> each.toBuy().isEmpty()).toList(), own);
        Alternative toBeat = atHand.orElse(own);
        Optional<Alternative> buyFirst = toBeat.worst() == Fit.RIGHT ? Optional.empty()
            : best(found.stream().filter(each -> each.toBuy().size() == 1 && each.worst().compareTo(toBeat.worst()) < 0).toList(), toBeat);
        return new WiringAdvice(atHand.filter(each -> !search.isAsNow(each)), buyFirst);
    }

    private static Optional<Alternative> best(List<Alternative> found, Alternative toBeat) {
        return found.stream().min(Comparator.comparingDouble(Alternative::points)).filter(each -> each.points() < toBeat.points() - BETTER_BY_POINTS);
    }

    /** Only the input's gain differs: its verdict says that better than a new plan. */
    private boolean isAsNow(Alternative other) {
        Line line = other.report().connection().main();
        return line.links().equals(connection.main().links()) && line.input().input().equals(connection.main().input().input())
            && line.input().phantom() == connection.main().input().phantom();
    }

    private List<Alternative> all() {
        List<Alternative> found = new ArrayList<>();
        for (List<Box> sequence : sequences()) {
            for (Input input : inputs) {
                if (connection.thru().isEmpty() || sequence.stream().anyMatch(Box::thru)) {
                    found.add(settled(sequence, input));
                }
            }
        }
        return found;
    }

    private List<List<Box>> sequences() {
        boolean powerAmp = boxes.stream().anyMatch(box -> box.output() == SignalKind.SPEAKER);
        List<Box> own = connection.main().boxes().stream().map(PluggedBox::box).toList();
        if (powerAmp) {
            return List.of(own);
        }
        List<List<Box>> sequences = new ArrayList<>(List.of(List.of(), own));
        List<Box> addable = new ArrayList<>(boxes);
        shop.boxes().stream().filter(box -> box.kind() != Box.Kind.AMP && box.kind() != Box.Kind.MIXER_CHANNEL && !box.speakerRated()).forEach(addable::add);
        for (Box first : addable) {
            sequences.add(List.of(first));
            for (Box second : boxes) {
                sequences.add(List.of(first, second));
                sequences.add(List.of(second, first));
            }
        }
        return sequences.stream().filter(sequence -> sequence.stream().map(Box::id).distinct().count() == sequence.size()).distinct().toList();
    }

    /** With its switches as this chain wants them: tried plain, then with what the verdicts ask for. */
    private Alternative settled(List<Box> sequence, Input input) {
        Alternative plain = alternative(sequence, input, false, 0, 0);
        if (sequence.stream().anyMatch(box -> asItStands(box).isPresent())) {
            plain = better(plain, alternative(sequence, input, false, AS_IT_STANDS, 0));
        }
        boolean lift = plain.has(WiringFault.GROUND_LOOP);
        Alternative best = lift ? better(plain, alternative(sequence, input, true, 0, 0)) : plain;
        if (best.has(WiringFault.LEVEL_TOO_HIGH)) {
            for (double padDb : sequence.stream().findFirst().map(Box::padsDb).orElse(List.of())) {
                best = better(best, alternative(sequence, input, lift, padDb, 0));
            }
        }
        if (best.has(WiringFault.LEVEL_TOO_LOW)) {
            best = better(best, alternative(sequence, input, lift, 0, 12));
            best = better(best, alternative(sequence, input, lift, 0, 24));
        }
        return best;
    }

    private static Alternative better(Alternative one, Alternative other) {
        return other.points() < one.points() ? other : one;
    }

    private Alternative alternative(List<Box> sequence, Input input, boolean lift, double padDb, double gainDb) {
        boolean phantom = input.phantomVolts() > 0 && (connection.pickup().power() == Power.PHANTOM || sequence.stream().anyMatch(box -> box.power() == Power.PHANTOM));
        List<Link> links = new ArrayList<>();
        List<String> toBuy = new ArrayList<>();
        SignalKind output = connection.pickup().output();
        boolean balanced = connection.pickup().balanced();
        for (int i = 0; i <= sequence.size(); i++) {
            boolean end = i == sequence.size();
            boolean inputBalanced = end ? input.balanced() : sequence.get(i).inputBalanced();
            CableRun run = cables.run(output, balanced && inputBalanced, end && input.accepts() == SignalKind.MICROPHONE, i, sequence.size() + 1);
            links.add(run);
            if (!cables.isAtHand(run.cable())) {
                toBuy.add(run.cable().name());
            }
            if (!end) {
                Box box = sequence.get(i);
                links.add(plugged(box, i == 0, lift, padDb, gainDb));
                if (boxes.stream().noneMatch(each -> each.id().equals(box.id()))) {
                    toBuy.add(box.name());
                }
                output = box.output();
                balanced = box.outputBalanced();
            }
        }
        Line line = new Line(links, new PluggedInput(input, OptionalDouble.empty(), phantom));
        Connection other = new Connection(connection.pickup(), line, connection.thru(), connection.sameOutlet(), connection.owned());
        return Alternative.of(ChainAnalysis.of(other, now.lowestHz()), toBuy.stream().distinct().toList());
    }

    private PluggedBox plugged(Box box, boolean first, boolean lift, double padDb, double gainDb) {
        if (padDb == AS_IT_STANDS && asItStands(box).isPresent()) {
            PluggedBox own = asItStands(box).get();
            return new PluggedBox(box, own.gainDb(), own.padDb(), box.power(), own.groundLift());
        }
        return new PluggedBox(box, box.gain().nearest(first ? gainDb : 0), first ? Math.max(0, padDb) : 0, box.power(), lift && box.groundLift());
    }

    private Optional<PluggedBox> asItStands(Box box) {
        return connection.main().boxes().stream().filter(plugged -> plugged.box().id().equals(box.id())).findFirst();
    }

    private static <T> List<T> distinct(List<T> first, List<T> second, java.util.function.Function<T, String> id) {
        List<T> all = new ArrayList<>();
        for (List<T> each : List.of(first, second)) {
            for (T item : each) {
                if (all.stream().noneMatch(known -> id.apply(known).equals(id.apply(item)))) {
                    all.add(item);
                }
            }
        }
        return List.copyOf(all);
    }
}
