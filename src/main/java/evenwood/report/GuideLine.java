package evenwood.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import evenwood.coach.GuidedCheck.Progress;
import evenwood.live.LivePicture;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Locale;

/** How a guided check stands: one JSON line, one line of words, or a few lines to redraw. */
public final class GuideLine {
    private static final int BAR_WIDTH = 40;
    private static final JsonFactory FACTORY = new JsonFactory();

    private GuideLine() { }

    public static String json(LivePicture picture, Progress progress, Sentences sentences) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = FACTORY.createGenerator(text)) {
            json.writeStartObject();
            json.writeStringField("schema", "evenwood.guide/1");
            json.writeNumberField("seconds", Math.rint(picture.readings().take().durationSeconds() * 1000) / 1000);
            json.writeStringField("state", word(picture.state().phase()));
            json.writeStringField("step", word(progress.step()));
            json.writeNumberField("done", Math.rint(progress.done() * 100) / 100);
            json.writeBooleanField("paused", progress.paused());
            json.writeStringField("asking", sentences.say(progress.asking()));
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

    public static String text(Progress progress, Sentences sentences) {
        return String.format(Locale.ROOT, "%-13s %3.0f %%  %s", sentences.say("guide.step." + word(progress.step())), progress.done() * 100,
            sentences.say(progress.asking()));
    }

    /** Always the same number of lines, so that they can be drawn over the ones before. */
    public static String[] lines(LivePicture picture, Progress progress, Sentences sentences, int widthCharacters) {
        int full = (int) Math.round(progress.done() * BAR_WIDTH);
        return new String[] {
            sentences.say("guide.step." + word(progress.step())) + "   " + "█".repeat(full) + "░".repeat(BAR_WIDTH - full),
            cut(sentences.say(progress.asking()), widthCharacters),
            cut(LiveLine.text(picture), widthCharacters),
            cut(picture.state().message(), widthCharacters),
        };
    }

    private static String cut(String text, int widthCharacters) {
        return text.length() <= widthCharacters ? text : text.substring(0, widthCharacters - 1) + "…";
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
