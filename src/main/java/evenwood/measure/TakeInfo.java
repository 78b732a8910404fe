package evenwood.measure;

import evenwood.sound.SoundFormat;

/**
 * Which stretch of sound the readings are of.
 *
 * @param name            the file's path, the input's name or the demo's title
 * @param format          its samples
 * @param durationSeconds how much of it was heard
 */
public record TakeInfo(String name, SoundFormat format, double durationSeconds) {
    public TakeInfo {
        if (!(durationSeconds >= 0)) {
            throw new IllegalArgumentException("take " + name + ": durationSeconds=" + durationSeconds + ", but it cannot be negative");
        }
    }
}
