package evenwood.cli;

import evenwood.coach.Assessment;
import evenwood.journal.Journal;
import evenwood.judge.SharedNotesRule;
import evenwood.judge.Statement;
import evenwood.judge.ToneComparison;
import evenwood.live.WholeTake;
import evenwood.measure.TakeReadings;
import evenwood.sound.SoundSource;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** The take another one should sound like. */
record WantedTake(TakeReadings readings) {
    /**
     * A file, or a take kept in the journal named by its number (also #12, where a file is named 12).
     *
     * @throws BadInput when it cannot be compared with
     */
    static WantedTake of(String what, String named, int channel, JournalPlace place, Terminal terminal) {
        return playedIn(what, isKept(named) ? "take " + named : named, heard(what, named, channel, place, terminal));
    }

    /** The same, though there may be no playing in it: hum and hiss can be compared without. */
    static TakeReadings heard(String what, String named, int channel, JournalPlace place, Terminal terminal) {
        if (!isKept(named)) {
            return heard(what, named, channel, terminal);
        }
        try (Journal journal = place.open()) {
            return journal.take(Long.parseLong(named.replace("#", ""))).assessment().readings();
        }
    }

    private static boolean isKept(String named) {
        return named.matches("#?\\d{1,18}") && !Files.exists(Path.of(named));
    }

    /**
     * @param what the command and option that named the take, for the words when it cannot be compared with
     * @throws BadInput when it cannot
     */
    static WantedTake measure(String what, String path, int channel, Terminal terminal) {
        return playedIn(what, path, heard(what, path, channel, terminal));
    }

    private static TakeReadings heard(String what, String path, int channel, Terminal terminal) {
        try (SoundSource source = TakeArgument.open(path, channel); ProgressBar progress = new ProgressBar(terminal)) {
            WholeTake whole = WholeTake.measure(source, progress::show);
            if (whole.failure().isPresent()) {
                throw new BadInput(what + ": " + whole.failure().get().getMessage());
            }
            return whole.readings();
        }
    }

    private static WantedTake playedIn(String what, String name, TakeReadings readings) {
        if (!readings.hasPlaying()) {
            throw new BadInput(what + ": no playing was heard in " + name + "; name a take of the same instrument with single notes in it");
        }
        return new WantedTake(readings);
    }

    ToneComparison comparison(TakeReadings heard) {
        return ToneComparison.withTake(heard, readings);
    }

    /** With what should be played so that the comparison becomes surer. */
    Assessment withMissing(Assessment assessment) {
        List<Statement> missing = assessment.readings().hasPlaying()
            ? SharedNotesRule.missing(assessment.verdict().tone().orElseThrow(), assessment.readings(), readings) : List.of();
        return assessment.withMissing(missing);
    }
}
