package evenwood.coach;

import evenwood.eq.BandResponse;
import evenwood.eq.ControlEffect;
import evenwood.eq.EqChain;
import evenwood.eq.EqFilter;
import evenwood.eq.RigInUse;
import evenwood.judge.NarrowCut;
import evenwood.measure.ThirdOctave;
import evenwood.rig.Control;
import evenwood.rig.Setting;
import java.util.Comparator;
import java.util.Optional;
import java.util.Set;

/**
 * The cut against one note that jumps out: on a plain equaliser, or on the one control of a rig that is narrow enough.
 *
 * <p>How: a bell or notch of the rig that stands idle is set to the note. It will do when it takes at least half of what is
 * wanted from the note and, {@value #BESIDE_SEMITONES} semitones beside it, less than half of that; the nearest in depth is
 * taken. A notch without a depth takes the whole fundamental and is for notes of {@value #FULL_NOTCH_FROM_DB} dB and more.
 * Source: our choice.
 * <p>Limits: how narrow a control is comes from its preset, what it takes from the bands as learned. The middle of most amps and mixers
 * is far too wide; then there is no such move.
 *
 * @param move   what to turn
 * @param change what that does to the sound
 */
record NarrowMove(Move move, EqChain change) {
    private static final double BESIDE_SEMITONES = 4;
    private static final double PART = 0.5;
    private static final double FULL_NOTCH_FROM_DB = 10;
    private static final double IDLE_DB = 0.25;

    /** @param taken controls that answer something else already */
    static Optional<NarrowMove> of(NarrowCut cut, Optional<RigInUse> rig, Set<Control> taken, double sampleRateHz) {
        if (rig.isEmpty()) {
            return Optional.of(new NarrowMove(EqMoves.move(cut), EqChain.of(EqFilter.peak(cut.frequencyHz(), cut.q(), cut.changeDb()))));
        }
        BandResponse response = new BandResponse(ThirdOctave.FROM_50_HZ_TO_16_KHZ, sampleRateHz);
        return rig.get().rig().settings().stream().filter(setting -> !taken.contains(setting.control()))
            .flatMap(setting -> turned(setting, cut).filter(to -> isNarrow(setting, to, cut, sampleRateHz)).map(to -> new Setting[] {setting, to}).stream())
            .min(Comparator.comparingDouble(turn -> Math.abs(changeDb(turn[0], turn[1], cut.frequencyHz(), sampleRateHz) - cut.changeDb())))
            .map(turn -> new NarrowMove(EqMoves.move(turn[0], turn[1], cut), rig.get().laws().of(turn[0].control()).change(turn[0], turn[1], response)));
    }

    /** The setting nearest to the cut; empty when the control is of another kind or does something else. */
    private static Optional<Setting> turned(Setting now, NarrowCut cut) {
        Control control = now.control();
        boolean bell = control.kind() == Control.Kind.PEAK || control.kind() == Control.Kind.NOTCH;
        boolean idle = !now.on() || control.gain().isPresent() && Math.abs(now.gainDb()) < IDLE_DB;
        if (!bell || !idle || control.gain().isEmpty() && cut.standsOutDb() < FULL_NOTCH_FROM_DB) {
            return Optional.empty();
        }
        Setting there = now.switched(true);
        if (control.frequency().isPresent()) {
            there = there.withFrequency(control.frequency().get().settable(control.frequency().get().positionOfHz(cut.frequencyHz())));
        }
        return Optional.of(control.gain().isEmpty() ? there
            : there.withGain(control.gain().get().settable(control.gain().get().positionOfDb(cut.changeDb()))));
    }

    private static boolean isNarrow(Setting from, Setting to, NarrowCut cut, double sampleRateHz) {
        double atNote = changeDb(from, to, cut.frequencyHz(), sampleRateHz);
        double apart = Math.pow(2, BESIDE_SEMITONES / 12);
        double beside = Math.min(changeDb(from, to, cut.frequencyHz() / apart, sampleRateHz), changeDb(from, to, cut.frequencyHz() * apart, sampleRateHz));
        return atNote <= PART * cut.changeDb() && beside > PART * atNote;
    }

    private static double changeDb(Setting from, Setting to, double hz, double sampleRateHz) {
        return ControlEffect.responseDb(to, hz, sampleRateHz) - ControlEffect.responseDb(from, hz, sampleRateHz);
    }
}
