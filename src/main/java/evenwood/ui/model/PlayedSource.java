package evenwood.ui.model;

/** What is listened to when the player is led through something: what is heard live already, the input chosen last, or the demo. */
public final class PlayedSource {
    private PlayedSource() { }

    /** The demo where the player has just had the demo checked, or has no input yet. */
    public static SoundChoice of(Now now, Choices choices) {
        String input = choices.get("source.input", "");
        boolean demoChecked = now.choice().filter(SoundChoice.DemoChecked.class::isInstance).isPresent();
        return now.choice().filter(SoundChoice::isLive).orElseGet(() -> input.isEmpty() || demoChecked ? new SoundChoice.DemoPlayed()
            : new SoundChoice.Live(input, (int) choices.number("source.channel", 1)));
    }

    public static String name(SoundChoice played, Words words) {
        return played instanceof SoundChoice.Live live ? words.input(live.inputName()) : words.say("guide.demo");
    }
}
