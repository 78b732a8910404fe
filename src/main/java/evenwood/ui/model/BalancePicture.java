package evenwood.ui.model;

import evenwood.coach.Assessment;
import evenwood.judge.ToneComparison;
import evenwood.measure.BandLevel;
import evenwood.measure.LongTermSpectrumReading;
import evenwood.measure.ToneDifference;
import evenwood.sound.Decibels;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Bass, middle and treble in a word each.
 *
 * @param parts lowest first; empty when nothing was played
 */
public record BalancePicture(List<Part> parts) {
    /**
     * @param name         bass, middle, treble
     * @param differenceDb more than wanted (positive) or less; 0 when nobody knows what is wanted
     * @param judged       whether it is known what is wanted
     * @param words        how it stands
     */
    public record Part(String name, double differenceDb, boolean judged, String words) { }

    private static final String[] NAMES = {"balance.low", "balance.mid", "balance.high"};

    public static BalancePicture of(Optional<Assessment> assessment, Words words) {
        if (assessment.isEmpty() || !assessment.get().readings().hasPlaying()) {
            return new BalancePicture(List.of());
        }
        LongTermSpectrumReading spectrum = assessment.get().readings().spectrum();
        double[] heardDb = {spectrum.lowDb(), spectrum.midDb(), spectrum.highDb()};
        Optional<ToneComparison> tone = assessment.get().verdict().tone();
        List<Part> parts = new ArrayList<>();
        for (int i = 0; i < NAMES.length; i++) {
            int which = i;
            parts.add(tone.map(wanted -> judged(which, heardDb[which], wanted, spectrum, words)).orElseGet(() -> share(which, heardDb[which], words)));
        }
        return new BalancePicture(parts);
    }

    private static Part share(int which, double heardDb, Words words) {
        return new Part(words.say(NAMES[which]), 0, false, words.say("balance.share", Decibels.toPower(heardDb)));
    }

    private static Part judged(int which, double heardDb, ToneComparison wanted, LongTermSpectrumReading spectrum, Words words) {
        double power = 0;
        double tolerance = 0;
        int bands = 0;
        for (BandLevel level : spectrum.bands()) {
            Double db = wanted.wantedDb().get(level.band());
            if (which == part(level) && db != null && Double.isFinite(db)) {
                power += Decibels.toPower(db);
                tolerance += wanted.difference().bands().stream().filter(band -> band.band().equals(level.band()))
                    .mapToDouble(ToneDifference.Band::toleranceDb).findFirst().orElse(0);
                bands++;
            }
        }
        if (bands == 0 || power == 0 || !Double.isFinite(heardDb)) {
            return share(which, heardDb, words);
        }
        double difference = heardDb - Decibels.ofPower(power);
        String key = Math.abs(difference) <= tolerance / bands ? wanted.against() == ToneComparison.Against.TAKE ? "balance.alike" : "balance.usual" : difference > 0 ? "balance.more" : "balance.less";
        return new Part(words.say(NAMES[which]), difference, true, words.say(key, Math.abs(difference)));
    }

    /** The same three parts as {@link LongTermSpectrumReading#lowDb()} and its siblings. */
    private static int part(BandLevel level) {
        double centre = level.band().centreHz();
        return centre < 224 ? 0 : centre < 2240 ? 1 : 2;
    }
}
