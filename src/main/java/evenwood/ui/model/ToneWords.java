package evenwood.ui.model;

/** What the lines and ribbons of a {@link TonePicture} mean: only of those that are there. */
public final class ToneWords {
    private ToneWords() { }

    public static String of(TonePicture picture, Words words) {
        if (picture.isEmpty()) {
            return words.say(picture.wanted().isEmpty() ? "tone.empty" : "tone.empty-usual");
        }
        StringBuilder text = new StringBuilder(words.say(picture.wanted().isEmpty() ? "tone.no-target" : "tone.legend"));
        if (!picture.predicted().isEmpty()) {
            text.append(' ').append(words.say("tone.legend-predicted"));
        }
        if (!picture.before().isEmpty()) {
            text.append(' ').append(words.say("tone.legend-before"));
        }
        return text.toString();
    }
}
