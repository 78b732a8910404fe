package evenwood.sound;

/** What can be wrong in the demo's kitchen, and how strong it is when nobody says otherwise. */
public enum DemoFault {
    /** Hum of the fridge: mains harmonics 1 to 5, RMS in dBFS. */
    FRIDGE_HUM(-50),
    /** Rasp of the fridge's supply: mains harmonics 6 to 40, RMS in dBFS. */
    FRIDGE_BUZZ(-58),
    /** Noise of a tired preamp, RMS in dBFS. */
    HISS(-58),
    /** The preamp overloads: its ceiling is so many dB under where the clean scenario's hardest strums peak. */
    PREAMP_OVERDRIVE(4),
    /** Gain after the preamp, dB too much: the converter clips. */
    TOO_HOT(15),
    /** Gain, dB too little. */
    TOO_QUIET(26),
    /** The body's air mode booms against the small room: dB at its frequency. */
    BOOM(8),
    /** A bad jack: clicks a second. */
    CRACKLE(3),
    /** A phone beside the cable: peak of its bursts in dBFS. */
    PHONE(-34);

    private final double usualAmount;

    DemoFault(double usualAmount) {
        this.usualAmount = usualAmount;
    }

    public double usualAmount() {
        return usualAmount;
    }
}
