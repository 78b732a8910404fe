package evenwood.report;

import evenwood.coach.hunt.HuntProgress;
import evenwood.coach.hunt.NoiseParts;
import evenwood.coach.hunt.Suspect;
import evenwood.coach.hunt.TrialResult;
import evenwood.rig.HuntTable.Part;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A noise hunt ready to be shown: words and numbers, nothing to be computed any more. The window, the terminal and JSON show the same.
 *
 * @param standing   where it stands
 * @param hunted     the part of the noise that is compared
 * @param noise      the noise as it was, a bar for each part
 * @param steps      trials made so far, in order
 * @param suspects   known causes, likeliest first
 * @param unlisted   how likely it is none of them
 * @param conclusion one sentence on where it stands
 * @param cure       what helps; empty while no cause stands out
 * @param next       what to do next; empty at the end
 * @param notOffered ids of trials that the rig or the player makes impossible
 */
public record HuntPicture(HuntProgress.Standing standing, Part hunted, List<Bar> noise, List<Step> steps, List<Cause> suspects, double unlisted,
                          String conclusion, Optional<String> cure, Optional<Task> next, List<String> notOffered) {

    /** @param word for people  @param halfWidthDb of the 95 % interval  @param noticeable whether it would be noticed under playing */
    public record Bar(Part part, String word, double levelDbfs, double halfWidthDb, boolean noticeable) { }

    /** @param id the trial's  @param words what to do */
    public record Task(String id, String words) { }

    /**
     * @param before  a bar for each part, everything as it was
     * @param after   a bar for each part, with this one thing changed
     * @param changeDb of the hunted part  @param halfWidthDb of its 95 % interval
     * @param outcome  in a word, and as people say it
     */
    public record Step(Task task, List<Bar> before, List<Bar> after, double changeDb, double halfWidthDb, TrialResult.Outcome outcome, String outcomeWord) { }

    /** @param words what it is, to follow "it is"  @param cure what helps against it */
    public record Cause(String id, double probability, String words, String cure) { }

    private static final double HALF_WIDTH = 1.96;

    public HuntPicture {
        noise = List.copyOf(noise);
        steps = List.copyOf(steps);
        suspects = List.copyOf(suspects);
        notOffered = List.copyOf(notOffered);
    }

    public static HuntPicture of(HuntProgress progress, Sentences sentences) {
        List<Cause> suspects = progress.hunt().ranking().stream().map(suspect -> cause(suspect, sentences)).toList();
        return new HuntPicture(progress.standing(), progress.hunt().part(), bars(progress.before(), sentences),
            progress.steps().stream().map(step -> step(step, sentences)).toList(), suspects, progress.hunt().unlisted(), conclusion(progress, suspects.get(0), sentences),
            progress.cause().map(cause -> suspects.get(0).cure()), progress.next().map(id -> task(id, sentences)),
            progress.hunt().impossible().stream().sorted().toList());
    }

    public static Task task(String trial, Sentences sentences) {
        return new Task(trial, sentences.say("hunt.do." + trial));
    }

    public static List<Bar> bars(NoiseParts parts, Sentences sentences) {
        return Arrays.stream(Part.values()).map(part -> new Bar(part, sentences.say("hunt.part." + word(part)), parts.levelDbfs().get(part),
            HALF_WIDTH * parts.deviationDb().get(part), parts.noticeable().contains(part))).toList();
    }

    static String word(Part part) {
        return part.name().toLowerCase(Locale.ROOT);
    }

    private static Step step(HuntProgress.Step step, Sentences sentences) {
        TrialResult result = step.result();
        return new Step(task(result.trial(), sentences), bars(step.before(), sentences), bars(step.after(), sentences), result.changeDb(), HALF_WIDTH * result.deviationDb(),
            result.outcome(), sentences.say("hunt.outcome." + result.outcome().name().toLowerCase(Locale.ROOT)));
    }

    private static Cause cause(Suspect suspect, Sentences sentences) {
        return new Cause(suspect.cause(), suspect.probability(), sentences.say("hunt.cause." + suspect.cause()), sentences.say("hunt.cure." + suspect.cause()));
    }

    private static String conclusion(HuntProgress progress, Cause first, Sentences sentences) {
        return switch (progress.standing()) {
            case QUIET -> sentences.say("hunt.quiet");
            case OPEN -> sentences.say("hunt.open", first.words());
            case FOUND -> sentences.say("hunt.found", first.words());
            case LIKELY -> sentences.say("hunt.likely", first.words());
            case UNDECIDED -> progress.hunt().unlisted() > first.probability() ? sentences.say("hunt.none-fits") : sentences.say("hunt.undecided", first.words());
        };
    }
}
