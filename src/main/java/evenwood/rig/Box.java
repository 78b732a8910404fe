package evenwood.rig;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Something between instrument and input: DI, preamp, pad, splitter, or an amplifier that is passed through.
 *
 * <p>An amplifying box has {@code inputOhms} and {@code outputOhms}; a passive one has a {@code transformer}, or the two
 * resistances of a pad, and shows each side the other.
 *
 * @param id             such as {@code active-di}
 * @param name           for people
 * @param kind           what it is
 * @param output         the family of level it gives
 * @param inputOhms      of an amplifying box; 0 for a passive one
 * @param inputFarads    capacitance of the input
 * @param outputOhms     of an amplifying box; 0 for a passive one
 * @param lowestHz       its own −3 dB corner in the bass; 0 for none
 * @param gain           how far its gain control reaches
 * @param padsDb         attenuations that can be switched in, without 0
 * @param transformer    of a passive box
 * @param padSeriesOhms  of a resistive pad, both legs together; 0 for none
 * @param padShuntOhms   of a resistive pad
 * @param inputBalanced  whether the input is balanced
 * @param outputBalanced whether the output is balanced
 * @param maximumInputDbu  highest peak it takes with no pad
 * @param maximumOutputDbu highest peak it gives
 * @param noiseNanovolts input voltage noise, nV/√Hz
 * @param outputNoiseDbu noise in 20 kHz that does not depend on the gain; −Infinity for none
 * @param groundLift     whether it has a ground-lift switch
 * @param liftKeepsPhantom whether phantom power still reaches it with the lift on
 * @param isolated       whether a transformer keeps the grounds of its two sides apart once lifted
 * @param thru           whether the input is also led out unchanged
 * @param speakerRated   whether its pad is made for a loudspeaker output
 * @param power          what it needs
 * @param phantomMilliamperes what it draws from phantom power
 * @param phantomLeastVolts   what must be left at its terminals
 * @param phantomProof   whether its output stands phantom power that it does not need
 * @param earthed        whether its mains plug has a protective earth that its sockets' screens meet
 * @param leastLoadOhms  lowest loudspeaker impedance it may drive; 0 for a box that drives none
 * @param needsLoad      whether it comes to harm without a loudspeaker
 * @param source         where the figures are from
 */
public record Box(String id, String name, Kind kind, SignalKind output, double inputOhms, double inputFarads, double outputOhms,
                  double lowestHz, GainRange gain, List<Double> padsDb, Optional<Transformer> transformer, double padSeriesOhms,
                  double padShuntOhms, boolean inputBalanced, boolean outputBalanced, OptionalDouble maximumInputDbu,
                  OptionalDouble maximumOutputDbu, double noiseNanovolts, double outputNoiseDbu, boolean groundLift,
                  boolean liftKeepsPhantom, boolean isolated, boolean thru, boolean speakerRated, Power power,
                  double phantomMilliamperes, double phantomLeastVolts, boolean phantomProof, boolean earthed, double leastLoadOhms, boolean needsLoad,
                  String source) {
    /** What a box is. */
    public enum Kind { PASSIVE_DI, ACTIVE_DI, PREAMP, PAD, ISOLATOR, AMP, MIXER_CHANNEL }

    public Box {
        padsDb = List.copyOf(padsDb);
    }

    /** Passes the signal on with no amplifier: each side feels the impedance of the other. */
    public boolean isPassive() {
        return transformer.isPresent() || padShuntOhms > 0;
    }

    static Box read(YamlFields fields) {
        Box box = new Box(fields.text("id"), fields.text("name"), fields.choice("kind", Kind.class), fields.choice("output", SignalKind.class),
            fields.optionalNumber("inputOhms", 1, 1e9, "ohm").orElse(0), fields.optionalNumber("inputPicofarads", 0, 1e5, "pF").orElse(0) * 1e-12,
            fields.optionalNumber("outputOhms", 0.001, 1e6, "ohm").orElse(0), fields.optionalNumber("lowestHz", 0, 200, "Hz").orElse(0),
            fields.has("gainDb") ? GainRange.read(fields.part("gainDb")) : GainRange.NONE,
            fields.has("padsDb") ? fields.numbers("padsDb", 1, 60, "dB") : List.of(),
            fields.has("transformer") ? Optional.of(Transformer.read(fields.part("transformer"))) : Optional.empty(),
            fields.optionalNumber("padSeriesOhms", 0, 1e6, "ohm").orElse(0), fields.optionalNumber("padShuntOhms", 0, 1e6, "ohm").orElse(0),
            fields.flag("inputBalanced", false), fields.flag("outputBalanced", false),
            fields.optionalNumber("maximumInputDbu", -40, 60, "dBu"), fields.optionalNumber("maximumOutputDbu", -40, 60, "dBu"),
            fields.optionalNumber("noiseNanovolts", 0, 1000, "nV/√Hz").orElse(0),
            fields.optionalNumber("outputNoiseDbu", -140, 0, "dBu").orElse(Double.NEGATIVE_INFINITY), fields.flag("groundLift", false),
            fields.flag("liftKeepsPhantom", false), fields.flag("isolated", false), fields.flag("thru", false), fields.flag("speakerRated", false),
            fields.choice("power", Power.class), fields.optionalNumber("phantomMilliamperes", 0, 15, "mA").orElse(0),
            fields.optionalNumber("phantomLeastVolts", 0, 52, "V").orElse(0), fields.flag("phantomProof", false), fields.flag("earthed", false),
            fields.optionalNumber("leastLoadOhms", 0, 100, "ohm").orElse(0), fields.flag("needsLoad", false), fields.text("source"));
        if (!box.isPassive() && (box.inputOhms == 0 || box.outputOhms == 0)) {
            throw fields.wrong("inputOhms", "missing", "a box with no transformer and no pad needs inputOhms and outputOhms");
        }
        fields.nothingElse();
        return box;
    }
}
