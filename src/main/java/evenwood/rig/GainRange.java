package evenwood.rig;

/** How far a gain control reaches; both ends the same where there is none. */
public record GainRange(double leastDb, double mostDb) {
    public static final GainRange NONE = new GainRange(0, 0);

    public double nearest(double gainDb) {
        return Math.max(leastDb, Math.min(mostDb, gainDb));
    }

    static GainRange read(YamlFields fields) {
        GainRange range = new GainRange(fields.number("least", -80, 90, "dB"), fields.number("most", -80, 90, "dB"));
        if (range.mostDb < range.leastDb) {
            throw fields.wrong("most", String.valueOf(range.mostDb), "it must not lie under least");
        }
        fields.nothingElse();
        return range;
    }
}
