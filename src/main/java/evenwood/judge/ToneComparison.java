package evenwood.judge;

import evenwood.measure.BandLevel;
import evenwood.measure.NotewiseDifference;
import evenwood.measure.TakeReadings;
import evenwood.measure.ThirdOctave;
import evenwood.measure.ToneDifference;
import evenwood.rig.Instrument;
import evenwood.rig.PickupColour;
import evenwood.rig.Rig;
import evenwood.rig.Tap;
import evenwood.rig.ToneTarget;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The tone of a take beside the one that is wanted.
 *
 * @param against      what is wanted: what such an instrument usually sounds like, or another take
 * @param name         the instrument's id, or the other take's name
 * @param lowestNoteHz where the instrument begins; the words boomy and thin move with it
 * @param spread       how the uncertainties of the bands hang together
 * @param wantedDb     the wanted level of each band against all bands, for what was played; bands as in the reading
 * @param difference   heard − wanted, with uncertainty and tolerance
 */
public record ToneComparison(Against against, String name, double lowestNoteHz, ToneSpread spread, Map<ThirdOctave, Double> wantedDb,
                             ToneDifference difference) {
    /** What a tone is held against. */
    public enum Against { INSTRUMENT, TAKE }

    private static final double DEVIATIONS_95 = 1.96;
    /** Standard deviation that register, key and dynamics leave once the notes are accounted for (docs/targets.md). */
    public static final double PLAYING_DEVIATION_DB = 2.1;
    /** The less of the sound lies in a band, the more instruments differ there (docs/targets.md). */
    private static final double SPREAD_PER_DB_LESS = 0.2;
    /** Where the target has next to nothing, what is heard there is no tone. */
    private static final double LEAST_WANTED_DB = -55;
    private static final double LEAST_BAND_HZ = 0.9;
    /** Above, sets of recordings differ by more than any tone control can do. */
    private static final double HIGHEST_JUDGED_HZ = 11_000;
    /** A microphone and the room before it: some 5 dB from band to band; common practice for rooms below 300 Hz and small microphones. */
    private static final double ROOM_DEVIATION_DB = 5;

    public ToneComparison {
        wantedDb = Map.copyOf(wantedDb);
    }

    /** Against what the rig's instrument usually sounds like through its pickup, where that is named. */
    public static Optional<ToneComparison> withInstrument(TakeReadings readings, Rig rig) {
        return withInstrument(readings, rig.instrument(), rig.tap(), rig.connection().flatMap(each -> each.pickup().colour()));
    }

    /** Against what such an instrument usually sounds like; empty when that is not known or nothing was played. */
    public static Optional<ToneComparison> withInstrument(TakeReadings readings, Instrument instrument, Tap tap) {
        return withInstrument(readings, instrument, tap, Optional.empty());
    }

    /** The same through a pickup of known colour. */
    public static Optional<ToneComparison> withInstrument(TakeReadings readings, Instrument instrument, Tap tap, Optional<PickupColour> colour) {
        if (instrument.target().isEmpty() || !readings.hasPlaying()) {
            return Optional.empty();
        }
        ToneTarget target = instrument.target().get();
        double[] wanted = ExpectedTone.levelsDb(target, readings.notes(), colour);
        double colourDb = colour.map(PickupColour::spreadDb).orElse(0.0);
        Map<ThirdOctave, Double> wantedDb = new TreeMap<>();
        List<ToneDifference.Band> bands = new ArrayList<>();
        for (BandLevel heard : readings.spectrum().bands()) {
            int place = ThirdOctave.FROM_50_HZ_TO_16_KHZ.indexOf(heard.band());
            wantedDb.put(heard.band(), wanted[place]);
            if (Double.isFinite(heard.relativeDb()) && Double.isFinite(wanted[place])) {
                bands.add(band(heard, wanted[place], target, place, instrument.lowestHz(), Math.hypot(colourDb, tap.hearsTheRoom() ? ROOM_DEVIATION_DB : 0)));
            }
        }
        return Optional.of(new ToneComparison(Against.INSTRUMENT, instrument.id(), instrument.lowestHz(), ToneSpread.OF_INSTRUMENTS,
            wantedDb, new ToneDifference(bands)));
    }

    /** Against another take on the same instrument, whatever was played; bands both takes share too few notes in stay unknown. */
    public static ToneComparison withTake(TakeReadings readings, TakeReadings wanted) {
        ToneDifference difference = NotewiseDifference.between(readings, wanted);
        Map<ThirdOctave, Double> heardDb = new TreeMap<>();
        readings.spectrum().bands().forEach(heard -> heardDb.put(heard.band(), heard.relativeDb()));
        Map<ThirdOctave, Double> wantedDb = new TreeMap<>();
        difference.bands().stream().filter(band -> heardDb.containsKey(band.band()))
            .forEach(band -> wantedDb.put(band.band(), heardDb.get(band.band()) - band.differenceDb()));
        double lowestHz = Math.min(readings.noteSpectra().lowestHz(), wanted.noteSpectra().lowestHz());
        return new ToneComparison(Against.TAKE, wanted.take().name(), lowestHz, ToneSpread.OF_TAKES, wantedDb, difference);
    }

    /** @param more standard deviation that pickup, microphone and room add to how instruments differ */
    private static ToneDifference.Band band(BandLevel heard, double wantedDb, ToneTarget target, int place, double lowestHz, double more) {
        boolean judged = heard.isAboveNoise() && heard.band().centreHz() >= LEAST_BAND_HZ * lowestHz
            && heard.band().centreHz() <= HIGHEST_JUDGED_HZ && wantedDb > LEAST_WANTED_DB && heard.relativeDb() > LEAST_WANTED_DB;
        double lessThanUsual = Math.max(0, target.levelDb().get(place) - wantedDb);
        double spread = target.spreadDb().get(place) + SPREAD_PER_DB_LESS * lessThanUsual;
        double variance = spread * spread * (1 + 1.0 / target.sources()) + PLAYING_DEVIATION_DB * PLAYING_DEVIATION_DB + more * more;
        double measured = heard.relativeHalfWidthDb();
        double uncertainty = Math.hypot(DEVIATIONS_95 * Math.sqrt(variance), measured);
        double tolerance = target.toleranceDb().get(place) + more;
        return new ToneDifference.Band(heard.band(), heard.relativeDb() - wantedDb, uncertainty, tolerance, judged ? 1 : 0);
    }
}
