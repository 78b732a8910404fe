package evenwood.judge;

import java.util.Optional;

/**
 * From how far under the playing a noise is noticed in the rests.
 *
 * <p>How: the playing is imagined at 80 dB SPL, a usual level at the player's place, in a room of 25 to 30 dB(A). A noise
 * that would then lie near the room's own is slight, one clearly above it is clear, one that a listener would complain
 * about is strong. Source: our choice. The ear's lower sensitivity at low frequencies (IEC 61672-1 A-weighting: −19 dB at
 * 100 Hz, −9 dB at 250 Hz) makes the limits for hum the strictest, a steady whistle is heard furthest down.
 *
 * @param slightDb the noise is noticed when it lies less than this under the playing
 * @param clearDb  it is plain to hear
 * @param strongDb it spoils the take
 */
public record Noticeability(double slightDb, double clearDb, double strongDb) {
    public static final Noticeability HUM = new Noticeability(55, 42, 28);
    public static final Noticeability BUZZ = new Noticeability(62, 50, 35);
    public static final Noticeability HISS = new Noticeability(48, 40, 28);
    public static final Noticeability TONE = new Noticeability(65, 52, 36);

    /** Nothing when the noise lies too far under the playing to be noticed. */
    public Optional<Severity> severity(double underPlayingDb) {
        if (underPlayingDb >= slightDb) {
            return Optional.empty();
        }
        return Optional.of(underPlayingDb >= clearDb ? Severity.SLIGHT
            : underPlayingDb >= strongDb ? Severity.CLEAR : Severity.STRONG);
    }
}
