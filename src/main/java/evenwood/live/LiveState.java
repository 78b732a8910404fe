package evenwood.live;

import java.util.List;

/**
 * How a live take stands: one immutable picture, made about ten times a second.
 *
 * @param phase       what it is doing
 * @param inputName   the input's name
 * @param heardFrames frames that reached the listener
 * @param lostFrames  frames that did not, for whatever cause; estimated by the clock where nothing else could count
 * @param gaps        the latest losses, oldest first, a still open one last; at most {@link GapLog#KEPT}
 * @param presence    whether anything is on the input at all
 * @param message     one calm sentence for the player with what to do; empty when all is well
 */
public record LiveState(Phase phase, String inputName, long heardFrames, long lostFrames, List<LiveGap> gaps,
                        SignalReading presence, String message) {
    public enum Phase { RUNNING, WAITING_FOR_DEVICE, STOPPED }

    public LiveState {
        gaps = List.copyOf(gaps);
    }
}
