package evenwood.journal;

import evenwood.measure.BandLevel;
import evenwood.measure.TakeReadings;
import evenwood.measure.ThirdOctave;
import evenwood.rig.Rig;
import evenwood.rig.Setting;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;

/**
 * One number of a take that can be followed over the months.
 *
 * @param name the JSON contract's name for it, where it has one; {@code band4000Db} for a third octave
 * @param unit dBFS, LUFS, dB …
 * @param of   how it comes out of a take and its rig; −Infinity when it was not measured
 */
public record Reading(String name, String unit, BiFunction<TakeReadings, Optional<Rig>, Double> of) {
    public static final String HIGH_DB = "highDb";
    public static final String HISS = "hissDbfs";
    public static final String FLOOR = "floorDbfs";
    public static final String PLAYING = "playingDbfs";
    /** Playing level with the rig's gains taken off: what instrument and pickup give. */
    public static final String OUTPUT = "outputDb";
    /** From the middle bands to the high ones; a boomy room or proximity does not move it. */
    public static final String TREBLE = "trebleDb";

    /** Everything that is followed. */
    public static final List<Reading> ALL = all();

    /** What a difference of two such readings is told in. */
    public String differenceUnit() {
        return switch (unit) {
            case "dBFS", "dBTP" -> "dB";
            case "LUFS" -> "LU";
            default -> unit;
        };
    }

    private static List<Reading> all() {
        Map<String, Reading> all = new LinkedHashMap<>();
        add(all, "truePeakDbtp", "dBTP", (take, rig) -> take.truePeak().truePeakDbtp());
        add(all, "integratedLufs", "LUFS", (take, rig) -> take.loudness().integratedLufs());
        add(all, "loudnessRangeLu", "LU", (take, rig) -> take.loudness().isSilent() ? Double.NEGATIVE_INFINITY : take.loudness().rangeLu());
        add(all, PLAYING, "dBFS", (take, rig) -> take.playingDbfs());
        add(all, OUTPUT, "dB", (take, rig) -> take.playingDbfs() - rig.map(Reading::gainDb).orElse(0.0));
        add(all, "softDbfs", "dBFS", (take, rig) -> take.dynamics().softDbfs());
        add(all, "usualDbfs", "dBFS", (take, rig) -> take.dynamics().usualDbfs());
        add(all, "hardDbfs", "dBFS", (take, rig) -> take.dynamics().hardDbfs());
        add(all, "crestFactorDb", "dB", (take, rig) -> take.level().isSilent() ? Double.NEGATIVE_INFINITY : take.level().crestFactorDb());
        add(all, FLOOR, "dBFS", (take, rig) -> take.noise().floorDbfs());
        add(all, "floorDbfsA", "dBFS(A)", (take, rig) -> take.noise().floorDbfsA());
        add(all, "signalToNoiseDb", "dB", (take, rig) -> take.signalToNoiseDb());
        add(all, "humDbfs", "dBFS", (take, rig) -> take.noise().humDbfs());
        add(all, "buzzDbfs", "dBFS", (take, rig) -> take.noise().buzzDbfs());
        add(all, HISS, "dBFS", (take, rig) -> take.noise().hissDbfs());
        add(all, "lowDb", "dB", (take, rig) -> take.spectrum().lowDb());
        add(all, "midDb", "dB", (take, rig) -> take.spectrum().midDb());
        add(all, HIGH_DB, "dB", (take, rig) -> take.spectrum().highDb());
        add(all, TREBLE, "dB", (take, rig) -> trebleDb(take));
        add(all, "distortionProbability", "", (take, rig) -> take.distortion().probability());
        for (ThirdOctave band : ThirdOctave.FROM_50_HZ_TO_16_KHZ) {
            add(all, bandName(band), "dB", (take, rig) -> bandDb(take, band));
        }
        return List.copyOf(all.values());
    }

    private static void add(Map<String, Reading> all, String name, String unit, BiFunction<TakeReadings, Optional<Rig>, Double> of) {
        all.put(name, new Reading(name, unit, of));
    }

    public static Optional<Reading> named(String name) {
        return ALL.stream().filter(reading -> reading.name.equalsIgnoreCase(name)).findFirst();
    }

    /** Its value in a take; −Infinity when it was not measured there. */
    public double in(TakeReadings take, Optional<Rig> rig) {
        double value = of.apply(take, rig);
        return Double.isFinite(value) ? value : Double.NEGATIVE_INFINITY;
    }

    static String bandName(ThirdOctave band) {
        return "band" + Math.round(band.nominalHz()) + "Db";
    }

    private static double bandDb(TakeReadings take, ThirdOctave band) {
        return take.spectrum().bands().stream().filter(level -> level.band().equals(band) && level.isAboveNoise())
            .mapToDouble(BandLevel::relativeDb).findFirst().orElse(Double.NEGATIVE_INFINITY);
    }

    private static double trebleDb(TakeReadings take) {
        double high = take.spectrum().highDb();
        double mid = take.spectrum().midDb();
        return Double.isFinite(high) && Double.isFinite(mid) ? high - mid : Double.NEGATIVE_INFINITY;
    }

    private static double gainDb(Rig rig) {
        return rig.settings().stream().filter(setting -> setting.on() && !setting.control().shapesTone()).mapToDouble(Setting::gainDb).sum();
    }
}
