package evenwood.wiring;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** Everything that can be wrong with how things are plugged together. */
public enum WiringFault {
    /** A piezo without preamp sees too low an impedance and loses its bass. */
    PIEZO_LOADED,
    /** The same, by a passive DI. */
    PIEZO_ON_PASSIVE_DI,
    /** A coil sees too low an impedance and loses its treble. */
    COIL_LOADED,
    /** Less than ten times the source's impedance. */
    IMPEDANCE_LOW,
    /** Hotter than the socket takes. */
    LEVEL_TOO_HIGH,
    /** Far under what the socket is made for. */
    LEVEL_TOO_LOW,
    /** A box cannot give what its gain asks of it. */
    OUTPUT_OVERLOADS,
    /** The input's gain stands so high that full scale is passed. */
    GAIN_TOO_HIGH,
    /** One stage turns up what another turns down. */
    GAINS_FIGHT,
    CABLE_TOO_LONG,
    /** Two balanced sockets, and a cable that is not. */
    CABLE_UNBALANCED,
    /** No screen, where a pickup's or line signal needs one. */
    SPEAKER_CABLE_ON_SIGNAL,
    /** Thin conductors where amperes flow. */
    SIGNAL_CABLE_ON_SPEAKER,
    SPEAKER_INTO_INPUT,
    /** A power amplifier with no loudspeaker. */
    AMP_WITHOUT_LOAD,
    SPEAKER_LOAD_LOW,
    /** A loudspeaker with no power amplifier. */
    NO_POWER_AMP,
    POWER_MISSING,
    PHANTOM_MISSING,
    /** Phantom power is on, and the way to the box lets none through. */
    PHANTOM_BLOCKED,
    PHANTOM_CUT_BY_LIFT,
    PHANTOM_WEAK,
    /** Phantom power into something unbalanced. */
    PHANTOM_UNWANTED,
    PHANTOM_ON_RIBBON,
    /** Phantom power into an output nobody promised to stand it. */
    PHANTOM_INTO_OUTPUT,
    GROUND_LOOP;

    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public static Optional<WiringFault> ofId(String id) {
        return Arrays.stream(values()).filter(fault -> fault.id().equals(id)).findFirst();
    }
}
