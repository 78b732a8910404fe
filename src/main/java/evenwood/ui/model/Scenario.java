package evenwood.ui.model;

import java.util.Locale;

/** A way instruments are often plugged in, ready to begin with. Common practice; the figures are round. */
public enum Scenario {
    STAGE("""
        chain: [{ cable: instrument-cable, metres: 3 }, { box: active-di, power: phantom }, { cable: microphone-cable, metres: 15 }]
        input: { id: mixer-microphone, gainDb: 30, phantom: true }
        """),
    STUDIO("""
        chain: [{ cable: instrument-cable, metres: 3 }, { box: piezo-buffer }, { cable: instrument-cable, metres: 3 }]
        input: { id: interface-instrument, gainDb: 10 }
        """),
    HOME("""
        chain: [{ cable: instrument-cable, metres: 3 }]
        input: { id: amp-instrument }
        """),
    AMP_LINE_OUT("""
        chain: [{ cable: instrument-cable, metres: 3 }, { box: acoustic-amp }, { cable: microphone-cable, metres: 15 }]
        input: { id: mixer-microphone, gainDb: 20 }
        """),
    AMP_AND_MIXER("""
        chain: [{ cable: instrument-cable, metres: 3 }, { box: active-di, power: battery, groundLift: true }, { cable: microphone-cable, metres: 15 }]
        input: { id: mixer-microphone, gainDb: 30 }
        thru:
          chain: [{ cable: instrument-cable, metres: 2 }]
          input: { id: amp-instrument }
        """),
    HEAD_AND_CABINET("""
        chain: [{ cable: instrument-cable, metres: 3 }, { box: amp-head }, { cable: speaker-cable, metres: 2 }]
        input: { id: speaker-cabinet }
        """);

    private final String chain;

    Scenario(String chain) {
        this.chain = chain;
    }

    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    String wiring(String pickupId) {
        return "pickup: " + pickupId + "\n" + chain;
    }
}
