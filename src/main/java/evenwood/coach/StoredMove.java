package evenwood.coach;

import evenwood.eq.BandResponse;
import evenwood.eq.EqChain;
import evenwood.eq.EqFilter;
import evenwood.eq.FilterKind;
import evenwood.eq.RigInUse;
import evenwood.measure.ThirdOctave;
import evenwood.rig.Rig;
import evenwood.rig.Setting;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A move as it was kept or written by hand: what it does to the sound, without the reasons.
 *
 * @param control     the control's name
 * @param kind        what sort of control
 * @param frequencyHz where a filter acts
 * @param q           width; absent for a shelf means slope 1
 * @param order       of a high-pass; 2 unless said
 * @param fromDb      setting before, if it counts in decibels
 * @param toDb        setting afterwards
 * @param changeDb    by how much it moves; a notch without it is a full one
 * @param from        position before in the control's own marking
 * @param to          position afterwards
 */
public record StoredMove(String control, Move.Kind kind, OptionalDouble frequencyHz, OptionalDouble q, int order, OptionalDouble fromDb,
                         OptionalDouble toDb, OptionalDouble changeDb, Optional<String> from, Optional<String> to) {
    private static final String OFF = "off";

    /** One control of a rig and the two settings a move names. */
    public record Turned(Setting from, Setting to) { }

    /**
     * The same on a rig: what a move says of one of its controls is taken as that control does it, learned where it was learned;
     * everything else as it is written.
     *
     * @param sampleRateHz of the take that is to sound so
     */
    public static EqChain chain(List<StoredMove> moves, RigInUse rig, double sampleRateHz) {
        BandResponse response = new BandResponse(ThirdOctave.FROM_50_HZ_TO_16_KHZ, sampleRateHz);
        EqChain all = EqChain.FLAT;
        for (StoredMove move : moves) {
            all = all.then(move.turned(rig.rig()).map(turned -> rig.laws().of(turned.from.control()).change(turned.from, turned.to, response))
                .orElseGet(() -> chain(List.of(move))));
        }
        return all;
    }

    /** What it turns on a rig; empty when the rig has no such control or its marking has no such positions. */
    Optional<Turned> turned(Rig rig) {
        // A high-pass is printed with what it does behind its name: "HPF (high-pass, 90 Hz, order 2)".
        return rig.controls().control(control).or(() -> rig.controls().control(control.replaceFirst(" \\(.*\\)$", ""))).flatMap(own -> {
            Optional<Setting> before = from.flatMap(words -> Setting.ofSaid(own, words));
            Optional<Setting> after = to.flatMap(words -> Setting.ofSaid(own, words));
            return before.isPresent() && after.isPresent() && !before.equals(after) ? Optional.of(new Turned(before.get(), after.get())) : Optional.empty();
        });
    }

    /** All moves as one chain that sound can pass. */
    public static EqChain chain(List<StoredMove> moves) {
        double gainDb = 0;
        List<EqFilter> filters = new ArrayList<>();
        for (StoredMove move : moves) {
            if (move.kind == Move.Kind.GAIN || move.kind == Move.Kind.VOLUME) {
                gainDb += move.changeDb.orElse(move.toDb.orElse(0) - move.fromDb.orElse(0));
            } else {
                filters.addAll(move.filters());
            }
        }
        return new EqChain(gainDb, filters);
    }

    private List<EqFilter> filters() {
        return switch (kind) {
            case LOW_SHELF -> gains(FilterKind.LOW_SHELF);
            case HIGH_SHELF -> gains(FilterKind.HIGH_SHELF);
            case PEAK -> gains(FilterKind.PEAK);
            case NOTCH -> changeDb.isPresent() ? gains(FilterKind.PEAK)
                : isSwitchedOff() ? List.of() : List.of(EqFilter.notch(hertz(), q.orElse(EqFilter.BUTTERWORTH_Q)));
            case HIGH_PASS -> isSwitchedOff() ? List.of()
                : List.of(new EqFilter(FilterKind.HIGH_PASS, hertz(), q.orElse(EqFilter.BUTTERWORTH_Q), 0, order));
            case GAIN, VOLUME, WIRING -> List.of();
        };
    }

    /** A stage that stood at some gain already is taken back by its exact inverse and set anew. */
    private List<EqFilter> gains(FilterKind shape) {
        double width = q.orElse(EqFilter.BUTTERWORTH_Q);
        List<EqFilter> filters = new ArrayList<>();
        boolean both = fromDb.isPresent() && toDb.isPresent();
        if (both && fromDb.getAsDouble() != 0) {
            filters.add(new EqFilter(shape, hertz(), width, -fromDb.getAsDouble(), 2));
        }
        double gainDb = both ? toDb.getAsDouble() : changeDb.orElse(toDb.orElse(0));
        if (gainDb != 0) {
            filters.add(new EqFilter(shape, hertz(), width, gainDb, 2));
        }
        return filters;
    }

    /** What a filter took away and is now switched off cannot be had back from a take. */
    private boolean isSwitchedOff() {
        return to.filter(OFF::equals).isPresent();
    }

    private double hertz() {
        return frequencyHz.orElseThrow(() -> new IllegalArgumentException("move of " + control + ": a " + kind.id() + " needs frequencyHz"));
    }
}
