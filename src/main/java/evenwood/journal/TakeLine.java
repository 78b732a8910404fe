package evenwood.journal;

import java.time.OffsetDateTime;
import java.util.List;

/**
 * One line of the list of kept takes: enough to find one, cheap enough for ten thousand.
 *
 * @param id              its number in this journal
 * @param uid             the same in every copy of the journal
 * @param keptAt          when
 * @param name            the file's or input's name
 * @param durationSeconds how long
 * @param instrument      empty when nobody said
 * @param rigName         empty without a rig
 * @param venue           where
 * @param note            the player's words
 * @param tags            to find it by
 * @param faults          what was found: {@code boomy:clear}, strongest first
 * @param hasAudio        whether the sound was kept too
 */
public record TakeLine(long id, String uid, OffsetDateTime keptAt, String name, double durationSeconds, String instrument,
                       String rigName, String venue, String note, List<String> tags, List<String> faults, boolean hasAudio) { }
