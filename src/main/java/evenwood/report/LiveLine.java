package evenwood.report;

import evenwood.judge.TargetWindow;
import evenwood.live.LivePicture;
import evenwood.live.LiveState;
import evenwood.measure.NowReading;
import java.util.Locale;

/** How a live take stands right now: one JSON line, one line of words, or a few lines of meters to redraw. */
public final class LiveLine {
    private static final double LADDER_LOWEST_DB = -60;
    private static final int LADDER_WIDTH = 40;
    /** Under this nothing was heard: it is the last of a filter dying away in silence, far under any converter's noise. */
    private static final double SILENCE_DB = -150;

    private LiveLine() { }

    public static String json(LivePicture picture) {
        NowReading now = picture.readings().now();
        return JsonFields.line("evenwood.listen/1", json -> json
            .number("seconds", Math.rint(picture.readings().take().durationSeconds() * 1000) / 1000)
            .text("state", JsonFields.word(picture.state().phase()))
            .number("peakDbtp", told(now.peakDbtp()))
            .number("rmsDbfs", told(now.rmsDbfs()))
            .number("truePeakDbtp", told(picture.readings().truePeak().truePeakDbtp()))
            .number("momentaryLufs", told(picture.readings().loudness().momentaryLufs()))
            .number("shortTermLufs", told(picture.readings().loudness().shortTermLufs()))
            .number("integratedLufs", told(picture.readings().loudness().integratedLufs()))
            .count("lostFrames", picture.state().lostFrames())
            .text("message", picture.state().message()));
    }

    public static String text(LivePicture picture, Sentences sentences) {
        return clock(picture.readings().take().durationSeconds()) + "  " + sentences.say("live.text", db(picture.readings().now().peakDbtp(), sentences),
            db(picture.readings().truePeak().truePeakDbtp(), sentences), db(picture.readings().loudness().shortTermLufs(), sentences)) + lost(picture.state(), sentences);
    }

    /** Always the same number of lines, so that they can be drawn over the ones before. */
    public static String[] meters(LivePicture picture, Sentences sentences, int widthCharacters) {
        NowReading now = picture.readings().now();
        double highest = picture.readings().truePeak().truePeakDbtp();
        return new String[] {
            cut(clock(picture.readings().take().durationSeconds()) + "  " + picture.state().inputName() + lost(picture.state(), sentences), widthCharacters),
            label("live.peak-now", sentences) + ladder(now.peakDbtp(), highest) + "  " + db(now.peakDbtp(), sentences) + " dBTP",
            label("live.target", sentences) + window() + "  " + sentences.say("live.window", db(TargetWindow.DEFAULT.lowDbtp(), sentences), db(TargetWindow.DEFAULT.highDbtp(), sentences)),
            label("live.highest", sentences) + sentences.say("live.peak-and-loudness", db(highest, sentences), db(picture.readings().loudness().shortTermLufs(), sentences)),
            label("live.note", sentences) + note(now),
            cut(picture.state().message(), widthCharacters),
        };
    }

    private static String label(String key, Sentences sentences) {
        return String.format(Locale.ROOT, "%-11s", sentences.say(key));
    }

    private static String note(NowReading now) {
        return now.pitch().frequencyHz() == 0 ? "–"
            : String.format(Locale.ROOT, "%s %+.0f cents", now.pitch().name(), now.pitch().cents());
    }

    private static String ladder(double level, double highest) {
        int full = column(level);
        StringBuilder bar = new StringBuilder("█".repeat(full) + "░".repeat(LADDER_WIDTH - full));
        int hold = column(highest);
        if (hold > 0) {
            bar.setCharAt(Math.min(LADDER_WIDTH, hold) - 1, '▏');
        }
        return bar.toString();
    }

    private static String window() {
        int low = column(TargetWindow.DEFAULT.lowDbtp());
        int high = column(TargetWindow.DEFAULT.highDbtp());
        return " ".repeat(low) + "█".repeat(high - low) + " ".repeat(LADDER_WIDTH - high);
    }

    private static int column(double db) {
        return (int) Math.round(Math.max(0, Math.min(1, 1 - db / LADDER_LOWEST_DB)) * LADDER_WIDTH);
    }

    private static String lost(LiveState state, Sentences sentences) {
        return state.lostFrames() == 0 ? "" : "  " + sentences.say("live.lost", state.lostFrames());
    }

    private static String clock(double seconds) {
        long whole = (long) seconds;
        return String.format(Locale.ROOT, "%d:%02d", whole / 60, whole % 60);
    }

    private static String db(double level, Sentences sentences) {
        return String.format(Locale.ROOT, "%5s", sentences.level(level < SILENCE_DB ? Double.NEGATIVE_INFINITY : level));
    }

    static String cut(String text, int widthCharacters) {
        return text.length() <= widthCharacters ? text : text.substring(0, widthCharacters - 1) + "…";
    }

    /** To a hundredth of a decibel; silence is no level. */
    private static double told(double level) {
        return level < SILENCE_DB ? Double.NEGATIVE_INFINITY : Math.rint(level * 100) / 100;
    }
}
