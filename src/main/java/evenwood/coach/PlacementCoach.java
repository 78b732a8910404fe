package evenwood.coach;

import evenwood.judge.Fault;
import evenwood.judge.RoomBass;
import evenwood.judge.Statement;
import evenwood.judge.Verdict;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Answers bass that the room makes: put the amp elsewhere before any bass is turned. */
final class PlacementCoach {
    private PlacementCoach() { }

    static List<Move> moves(Verdict verdict, Optional<RoomBass> room) {
        boolean booms = room.isPresent() && ToneCoach.toneFindings(verdict).stream().anyMatch(room.get()::explains);
        return !booms ? List.of() : List.of(new Move(1, Move.Control.plain("control.placement"), Move.Kind.WIRING, OptionalDouble.empty(), OptionalDouble.empty(),
            OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty(), Optional.empty(), Statement.of("boomy.room-cure"), Fault.BOOMY));
    }
}
