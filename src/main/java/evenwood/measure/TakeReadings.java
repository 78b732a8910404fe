package evenwood.measure;

/**
 * All readings of one take at one moment: what every judgement is made from. Immutable.
 *
 * @param take       which stretch of sound
 * @param now        its last moment
 * @param level      sample peak, RMS, crest
 * @param truePeak   highest point, also between samples
 * @param loudness   to the ear
 * @param activity   when somebody played
 * @param notes      what was played
 * @param noteSpectra what the single notes were made of
 * @param dynamics   how soft and how hard
 * @param spectrum   how bass, middle and treble stand to each other
 * @param noise      what the rig adds
 * @param clicks     crackle
 * @param dropouts   where the sound broke off
 * @param distortion whether and where tops are lost
 * @param ringing    howl that started
 */
public record TakeReadings(TakeInfo take, NowReading now, LevelReading level, TruePeakReading truePeak, LoudnessReading loudness,
                           ActivityReading activity, NotesReading notes, NoteSpectraReading noteSpectra, DynamicsReading dynamics,
                           LongTermSpectrumReading spectrum, NoiseReading noise, ClickReading clicks, DropoutReading dropouts,
                           DistortionReading distortion, RingingReading ringing) {
    private static final double LEAST_PLAYING_SECONDS = 0.3;

    public boolean hasPlaying() {
        return activity.playingSeconds() >= LEAST_PLAYING_SECONDS && !spectrum.isSilent();
    }

    /** The same with a newer moment, newer peaks and any howl that began; everything that takes long to work out stays as it was. */
    TakeReadings at(TakeInfo newTake, NowReading newNow, LevelReading newLevel, TruePeakReading newTruePeak, LoudnessReading newLoudness,
                    RingingReading newRinging) {
        return new TakeReadings(newTake, newNow, newLevel, newTruePeak, newLoudness, activity, notes, noteSpectra, dynamics, spectrum, noise,
            clicks, dropouts, distortion, newRinging);
    }

    /** Average level while playing, plain RMS; −Infinity when nothing was played. */
    public double playingDbfs() {
        return spectrum.overallDbfs();
    }

    /** The playing over the quiet parts; +Infinity over digital silence, −Infinity when nothing was played. */
    public double signalToNoiseDb() {
        if (!hasPlaying()) {
            return Double.NEGATIVE_INFINITY;
        }
        return playingDbfs() - noise.floorDbfs();
    }
}
