package evenwood.cli;

import evenwood.coach.hunt.HuntProgress;
import evenwood.coach.hunt.NoiseParts;
import evenwood.live.NoiseSpell;
import evenwood.report.Sentences;
import evenwood.rig.HuntTable;
import evenwood.sound.SoundSource;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** A hunt in recordings: the noise as it is, then trials by their names. */
final class HuntRecordings {
    private static final String BEFORE = "before";

    private final HuntTable table;
    private final Set<HuntTable.Need> facts;
    private final Optional<HuntTable.Part> wanted;
    private final int channel;
    private final List<String> remarks;

    HuntRecordings(HuntTable table, Set<HuntTable.Need> facts, Optional<HuntTable.Part> wanted, int channel, List<String> remarks) {
        this.table = table;
        this.facts = facts;
        this.wanted = wanted;
        this.channel = channel;
        this.remarks = remarks;
    }

    HuntProgress hunt(List<String> recordings) {
        recordings.stream().skip(1).forEach(this::checked); // a wrong word is told before anything is measured
        HuntProgress progress = HuntProgress.start(table, facts, parts(first(recordings.get(0))), wanted);
        for (String recording : recordings.subList(1, recordings.size())) {
            String label = label(recording);
            NoiseParts heard = parts(recording.substring(label.length() + 1));
            progress = label.equals(BEFORE) ? progress.since(heard) : progress.after(HuntCommand.trial(table, label), heard);
        }
        return progress;
    }

    private void checked(String recording) {
        String label = label(recording);
        if (!label.equals(BEFORE)) {
            HuntCommand.trial(table, label);
        }
    }

    private static String first(String recording) {
        return recording.startsWith(BEFORE + "=") ? recording.substring(BEFORE.length() + 1) : recording;
    }

    private static String label(String recording) {
        int end = recording.indexOf('=');
        if (end <= 0) {
            throw new BadInput("hunt: --from " + recording + ", but a trial's name and = are needed before every file after the first, such as touch-strings="
                + recording);
        }
        return recording.substring(0, end);
    }

    private NoiseParts parts(String file) {
        try (SoundSource source = TakeArgument.open(file, channel)) {
            NoiseParts parts = NoiseSpell.measure(source);
            if (parts.isUnsteady()) {
                remarks.add(file + ": " + Sentences.english().say("hunt.unsteady"));
            }
            return parts;
        }
    }
}
