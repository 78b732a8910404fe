package evenwood.report;

import evenwood.coach.GuidedCheck.Progress;
import evenwood.live.LivePicture;
import java.util.Locale;

/** How a guided check stands: one JSON line, one line of words, or a few lines to redraw. */
public final class GuideLine {
    private static final int BAR_WIDTH = 40;

    private GuideLine() { }

    public static String json(LivePicture picture, Progress progress, Sentences sentences) {
        return JsonFields.line("evenwood.guide/1", json -> json
            .number("seconds", Math.rint(picture.readings().take().durationSeconds() * 1000) / 1000)
            .text("state", JsonFields.word(picture.state().phase()))
            .text("step", JsonFields.word(progress.step()))
            .number("done", Math.rint(progress.done() * 100) / 100)
            .flag("paused", progress.paused())
            .text("asking", sentences.say(progress.asking()))
            .text("message", picture.state().message()));
    }

    public static String text(Progress progress, Sentences sentences) {
        return String.format(Locale.ROOT, "%-13s %3.0f %%  %s", sentences.say("guide.step." + JsonFields.word(progress.step())), progress.done() * 100,
            sentences.say(progress.asking()));
    }

    /** Always the same number of lines, so that they can be drawn over the ones before. */
    public static String[] lines(LivePicture picture, Progress progress, Sentences sentences, int widthCharacters) {
        int full = (int) Math.round(progress.done() * BAR_WIDTH);
        return new String[] {
            sentences.say("guide.step." + JsonFields.word(progress.step())) + "   " + "█".repeat(full) + "░".repeat(BAR_WIDTH - full),
            LiveLine.cut(sentences.say(progress.asking()), widthCharacters),
            LiveLine.cut(LiveLine.text(picture, sentences), widthCharacters),
            LiveLine.cut(picture.state().message(), widthCharacters),
        };
    }
}
