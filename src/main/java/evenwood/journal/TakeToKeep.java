package evenwood.journal;

import evenwood.coach.Assessment;
import evenwood.rig.Rig;
import java.time.OffsetDateTime;
import java.util.Optional;

/**
 * A take on its way into the journal.
 *
 * @param uid        the same in every copy of the journal; {@link java.util.UUID}
 * @param keptAt     when, at the place where it was played
 * @param assessment readings, findings, moves
 * @param rig        as it stood
 * @param words      what the player says about it
 * @param flac       the sound, if it is to be kept
 */
public record TakeToKeep(String uid, OffsetDateTime keptAt, Assessment assessment, Optional<Rig> rig, TakeWords words, Optional<byte[]> flac) {
    public TakeToKeep(OffsetDateTime keptAt, Assessment assessment, Optional<Rig> rig, TakeWords words) {
        this(java.util.UUID.randomUUID().toString(), keptAt, assessment, rig, words, Optional.empty());
    }

    public TakeToKeep withFlac(byte[] sound) {
        return new TakeToKeep(uid, keptAt, assessment, rig, words, Optional.of(sound));
    }

    public TakeToKeep withoutSound() {
        return new TakeToKeep(uid, keptAt, assessment, rig, words, Optional.empty());
    }
}
