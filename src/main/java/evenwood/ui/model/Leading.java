package evenwood.ui.model;

import java.util.Optional;

/** Leads the player on whatever page is open: the guided check, and learning a control. Thread: the screen's. */
public final class Leading {
    private final CurrentTake take;
    private final GuideModel guide = new GuideModel();
    private final LearnModel learn;

    public Leading(CurrentTake take, RigModel rig) {
        this.take = take;
        learn = new LearnModel(rig);
    }

    public GuideModel guide() {
        return guide;
    }

    public LearnModel learn() {
        return learn;
    }

    /** Counts what was heard, and ends the take when it was enough. */
    public void hear(Now now) {
        if (learn.hear(now, take.number())) {
            take.stop();
        }
        if (guide.isOn()) {
            guide.hear(now);
            take.askDemo(guide.asked());
            if (guide.isOver()) {
                take.stop();
            }
        }
    }

    /** Whether something may be ready although the take has nothing new. */
    public boolean isWaiting() {
        return learn.stage() == LearnModel.Stage.WORK;
    }

    /** What the player is asked for just now; empty when not led. */
    public Optional<String> asking(Words words) {
        return guide.isOn() ? Optional.of(guide.picture(words).asking())
            : learn.stage() == LearnModel.Stage.HEAR ? Optional.of(learn.picture(words).asking()) : Optional.empty();
    }

    /** While the player is led, what is asked stands over every other page; what is amiss goes before. */
    public Headline headline(Headline line, String page, Words words) {
        Optional<String> asking = line.tone() == Headline.Tone.AMISS ? Optional.empty() : asking(words);
        String here = words.say(guide.isOn() ? "headline.guided" : "headline.learning");
        return asking.map(asked -> new Headline(Headline.Tone.CALM, page.equals(guide.isOn() ? "guide" : "rig") ? here : asked)).orElse(line);
    }
}
