package evenwood.report;

import evenwood.coach.hunt.HuntProgress;
import evenwood.coach.hunt.NoiseParts;
import evenwood.rig.HuntTable.Part;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A noise hunt in plain lines: what was measured, the ranking of causes, cause and cure, what to do next. */
public final class HuntText {
    private static final int MOST_SUSPECTS = 4;
    private static final int BAR_CHARACTERS = 30;
    private static final double LOWEST_SHOWN = 0.02;
    private static final double LOWEST_DBFS = -100;
    private static final double HIGHEST_DBFS = -20;

    private final HuntPicture picture;
    private final Sentences sentences;
    private final int widthCharacters;
    private final List<String> lines = new ArrayList<>();

    private HuntText(HuntPicture picture, Sentences sentences, int widthCharacters) {
        this.picture = picture;
        this.sentences = sentences;
        this.widthCharacters = widthCharacters;
    }

    /** Everything, for the end or for recordings. */
    public static List<String> lines(HuntPicture picture, Sentences sentences, int widthCharacters) {
        HuntText text = new HuntText(picture, sentences, widthCharacters);
        text.noise(picture.noise());
        for (HuntPicture.Step step : picture.steps()) {
            text.step(step);
        }
        if (picture.standing() != HuntProgress.Standing.QUIET) {
            text.suspects();
        }
        text.end();
        return text.lines;
    }

    /** The noise as it was, to begin with. */
    public static List<String> noiseLines(HuntPicture picture, Sentences sentences, int widthCharacters) {
        HuntText text = new HuntText(picture, sentences, widthCharacters);
        text.noise(picture.noise());
        return text.lines;
    }

    /** The newest trial and what follows from it. */
    public static List<String> newest(HuntPicture picture, Sentences sentences, int widthCharacters) {
        HuntText text = new HuntText(picture, sentences, widthCharacters);
        text.step(picture.steps().get(picture.steps().size() - 1));
        text.suspects();
        return text.lines;
    }

    private void noise(List<HuntPicture.Bar> bars) {
        lines.add(sentences.say("hunt.noise-head"));
        for (HuntPicture.Bar bar : bars) {
            lines.add("  " + bar(bar) + (bar.noticeable() ? "  " + sentences.say(bar.part() == picture.hunted() ? "hunt.noticed-hunted" : "hunt.noticed") : ""));
        }
        lines.add("");
    }

    private void step(HuntPicture.Step step) {
        TextWrap.wrap(lines, widthCharacters, "", step.task().words() + ":");
        for (int i = 0; i < step.before().size(); i++) {
            if (step.before().get(i).part() == picture.hunted()) {
                int width = Math.max(sentences.say("hunt.before").length(), sentences.say("hunt.after").length());
                lines.add("  " + padded(sentences.say("hunt.before"), width) + " " + bar(step.before().get(i)));
                lines.add("  " + padded(sentences.say("hunt.after"), width) + " " + bar(step.after().get(i)));
            }
        }
        lines.add(String.format(Locale.ROOT, "  %s: %s dB (±%s)", step.outcomeWord(), signed(step.changeDb()), sentences.number(step.halfWidthDb(), 1)));
        others(step);
        lines.add("");
    }

    /** Parts that are not hunted but would be noticed. */
    private void others(HuntPicture.Step step) {
        List<String> words = new ArrayList<>();
        for (int i = 0; i < step.before().size(); i++) {
            HuntPicture.Bar before = step.before().get(i);
            if (before.part() != picture.hunted() && (before.noticeable() || step.after().get(i).noticeable())) {
                words.add(before.word() + " " + signed(step.after().get(i).levelDbfs() - before.levelDbfs()) + " dB");
            }
        }
        if (!words.isEmpty()) {
            lines.add("  " + sentences.say("hunt.beside", String.join(", ", words)));
        }
    }

    private void suspects() {
        lines.add(sentences.say("hunt.likeliest"));
        for (int i = 0; i < MOST_SUSPECTS && (i == 0 || picture.suspects().get(i).probability() >= LOWEST_SHOWN); i++) {
            HuntPicture.Cause cause = picture.suspects().get(i);
            suspect(cause.probability(), cause.words());
        }
        if (picture.unlisted() >= LOWEST_SHOWN) {
            suspect(picture.unlisted(), sentences.say("hunt.unlisted"));
        }
        lines.add("");
    }

    private void suspect(double probability, String words) {
        TextWrap.wrap(lines, widthCharacters, String.format(Locale.ROOT, "  %3d %%  ", Math.round(100 * Math.min(0.99, probability))), words);
    }

    private void end() {
        TextWrap.wrap(lines, widthCharacters, "", picture.conclusion() + ".");
        picture.cure().ifPresent(cure -> TextWrap.wrap(lines, widthCharacters, "", cure + "."));
        picture.next().ifPresent(task -> {
            lines.add("");
            TextWrap.wrap(lines, widthCharacters, sentences.say("hunt.next", task.id()) + " ", task.words() + ".");
        });
    }

    /** All parts in one line, for a measurement that goes on. */
    public static String now(NoiseParts parts, Sentences sentences) {
        return String.join("   ", HuntPicture.bars(parts, sentences).stream().map(bar -> bar.word() + " " + sentences.level(bar.levelDbfs())).toList()) + " dBFS";
    }

    private static String padded(String word, int characters) {
        return word + " ".repeat(characters - word.length());
    }

    private String bar(HuntPicture.Bar bar) {
        double part = (bar.levelDbfs() - LOWEST_DBFS) / (HIGHEST_DBFS - LOWEST_DBFS);
        int full = (int) Math.round(BAR_CHARACTERS * Math.max(0, Math.min(1, part)));
        int wordCharacters = picture.noise().stream().mapToInt(each -> each.word().length()).max().orElse(0);
        return String.format(Locale.ROOT, "%s %s%s %6s dBFS", padded(bar.word(), wordCharacters), "█".repeat(full), "░".repeat(BAR_CHARACTERS - full), sentences.number(bar.levelDbfs(), 1));
    }

    private String signed(double db) {
        return (db > 0.05 ? "+" : "") + sentences.number(db, 1);
    }

    /** For people: "hum", "buzz", "hiss", "tone". */
    public static String word(Part part) {
        return HuntPicture.word(part);
    }
}
