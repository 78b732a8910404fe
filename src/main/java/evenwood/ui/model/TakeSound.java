package evenwood.ui.model;

import evenwood.coach.PeakAfter;
import evenwood.coach.PeakForecast;
import evenwood.eq.EqChain;
import evenwood.eq.EqualisedTake;
import evenwood.live.Listening;
import evenwood.measure.TakeReadings;
import evenwood.sound.LiveInputs;
import evenwood.sound.SoundFiles;
import evenwood.sound.SoundProblem;
import evenwood.sound.SoundSource;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;

/** The sound of what was chosen: opened to be measured, and once more for the ears. Thread: any, one opens live. */
final class TakeSound {
    private final DemoTurns demo;
    private final KeptSound kept = new KeptSound();

    TakeSound(DemoTurns demo) {
        this.demo = demo;
    }

    /** From its beginning, as fast as it can be read. */
    SoundSource open(SoundChoice choice) {
        return choice instanceof SoundChoice.Recording recording ? SoundFiles.open(recording.file(), recording.channel()) : demo.recorded();
    }

    Listening listen(SoundChoice choice) {
        Supplier<? extends SoundSource> opener = choice instanceof SoundChoice.Live live
            ? LiveInputs.opener(LiveInputs.choose(live.inputName().isEmpty() ? null : live.inputName()), live.channel()) : demo::live;
        SoundSource source = opener.get();
        kept.begin(source.format());
        return Listening.start(source, opener, kept);
    }

    void forget() {
        kept.clear();
    }

    /** Empty when nothing of it was kept. */
    Optional<SoundSource> again(SoundChoice choice) {
        return choice instanceof SoundChoice.Live ? kept.source() : Optional.of(open(choice));
    }

    /** How high its peaks get through a change: heard again where that can be done, and as long as it is wanted. */
    PeakForecast forecast(SoundChoice choice, TakeReadings readings, BooleanSupplier wanted) {
        PeakForecast guessed = PeakForecast.fromSpectrum(readings);
        return choice.isLive() ? guessed
            : change -> wanted.getAsBoolean() ? heardAgain(choice, change).orElseGet(() -> guessed.after(change)) : guessed.after(change);
    }

    /** Empty when it cannot be opened any more. */
    private Optional<PeakAfter> heardAgain(SoundChoice choice, EqChain change) {
        try (SoundSource source = open(choice)) {
            return Optional.of(new PeakAfter(EqualisedTake.measure(source, change).truePeakDbtp(), 0));
        } catch (SoundProblem gone) {
            return Optional.empty();
        }
    }
}
