package evenwood.judge;

import java.util.Locale;

/**
 * How much a finding matters to the player: {@link #SLIGHT} may be left, {@link #CLEAR} should be mended,
 * {@link #STRONG} spoils the take.
 */
public enum Severity {
    SLIGHT, CLEAR, STRONG;

    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }
}
