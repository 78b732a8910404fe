package evenwood.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import evenwood.judge.TargetWindow;
import evenwood.live.LivePicture;
import evenwood.live.LiveState;
import evenwood.measure.NowReading;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Locale;

/** How a live take stands right now: one JSON line, one line of words, or a few lines of meters to redraw. */
public final class LiveLine {
    private static final double LADDER_LOWEST_DB = -60;
    private static final int LADDER_WIDTH = 40;
    /** Under this nothing was heard: it is the last of a filter dying away in silence, far under any converter's noise. */
    private static final double SILENCE_DB = -150;
    private static final JsonFactory FACTORY = new JsonFactory();

    private LiveLine() { }

    public static String json(LivePicture picture) {
        NowReading now = picture.readings().now();
        StringWriter text = new StringWriter();
        try (JsonGenerator json = FACTORY.createGenerator(text)) {
            json.writeStartObject();
            json.writeStringField("schema", "evenwood.listen/1");
            json.writeNumberField("seconds", Math.rint(picture.readings().take().durationSeconds() * 1000) / 1000);
            json.writeStringField("state", picture.state().phase().name().toLowerCase(Locale.ROOT).replace('_', '-'));
            level(json, "peakDbtp", now.peakDbtp());
            level(json, "rmsDbfs", now.rmsDbfs());
            level(json, "truePeakDbtp", picture.readings().truePeak().truePeakDbtp());
            level(json, "momentaryLufs", picture.readings().loudness().momentaryLufs());
            level(json, "shortTermLufs", picture.readings().loudness().shortTermLufs());
            level(json, "integratedLufs", picture.readings().loudness().integratedLufs());
            json.writeNumberField("lostFrames", picture.state().lostFrames());
            if (picture.state().message().isEmpty()) {
                json.writeNullField("message");
            } else {
                json.writeStringField("message", picture.state().message());
            }
            json.writeEndObject();
        } catch (IOException cannotHappen) {
            throw new UncheckedIOException(cannotHappen);
        }
        return text.toString();
    }

    public static String text(LivePicture picture) {
        NowReading now = picture.readings().now();
        return String.format(Locale.ROOT, "%s  now %s dBTP  highest %s dBTP  loudness %s LUFS%s",
            clock(picture.readings().take().durationSeconds()), db(now.peakDbtp()), db(picture.readings().truePeak().truePeakDbtp()),
            db(picture.readings().loudness().shortTermLufs()), lost(picture.state()));
    }

    /** Always the same number of lines, so that they can be drawn over the ones before. */
    public static String[] meters(LivePicture picture, int widthCharacters) {
        NowReading now = picture.readings().now();
        double highest = picture.readings().truePeak().truePeakDbtp();
        return new String[] {
            cut(clock(picture.readings().take().durationSeconds()) + "  " + picture.state().inputName() + lost(picture.state()), widthCharacters),
            "Peak now   " + ladder(now.peakDbtp(), highest) + "  " + db(now.peakDbtp()) + " dBTP",
            "Target     " + window() + "  " + db(TargetWindow.DEFAULT.lowDbtp()) + " to " + db(TargetWindow.DEFAULT.highDbtp()) + " dBTP for your hardest playing",
            "Highest    " + db(highest) + " dBTP   loudness " + db(picture.readings().loudness().shortTermLufs()) + " LUFS",
            "Note       " + note(now),
            cut(picture.state().message(), widthCharacters),
        };
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

    private static String lost(LiveState state) {
        return state.lostFrames() == 0 ? "" : "  lost " + state.lostFrames() + " frames";
    }

    private static String clock(double seconds) {
        long whole = (long) seconds;
        return String.format(Locale.ROOT, "%d:%02d", whole / 60, whole % 60);
    }

    private static String db(double level) {
        return level < SILENCE_DB ? "    –" : String.format(Locale.ROOT, "%5.1f", level).replace('-', '−');
    }

    private static String cut(String text, int widthCharacters) {
        return text.length() <= widthCharacters ? text : text.substring(0, widthCharacters - 1) + "…";
    }

    private static void level(JsonGenerator json, String field, double level) throws IOException {
        if (level >= SILENCE_DB && Double.isFinite(level)) {
            json.writeNumberField(field, Math.rint(level * 100) / 100);
        } else {
            json.writeNullField(field);
        }
    }
}
