package evenwood.measure;

/**
 * The last moment of a live take.
 *
 * @param peakDbtp highest true peak of the last quarter of a second; −Infinity when silent
 * @param rmsDbfs  its level; −Infinity when silent
 * @param pitch    the note that sounds, for the tuner
 */
public record NowReading(double peakDbtp, double rmsDbfs, PitchReading pitch) { }
