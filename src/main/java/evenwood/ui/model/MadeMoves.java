package evenwood.ui.model;

import evenwood.coach.Move;
import evenwood.coach.StoredMove;
import evenwood.eq.EqChain;
import java.util.List;

/** Moves of the coach as something sound can pass, so that each can be heard by itself. */
final class MadeMoves {
    private static final int USUAL_ORDER = 2;

    private MadeMoves() { }

    static EqChain chain(List<Move> moves) {
        return StoredMove.chain(moves.stream().map(MadeMoves::stored).toList());
    }

    private static StoredMove stored(Move move) {
        return new StoredMove(move.control().ownName().orElse(""), move.kind(), move.frequencyHz(), move.q(), order(move), move.fromDb(), move.toDb(),
            move.changeDb(), move.from(), move.to());
    }

    /** A high-pass names its order last among its name's figures. */
    private static int order(Move move) {
        List<Object> figures = move.control().plainName().figures();
        return move.kind() == Move.Kind.HIGH_PASS && !figures.isEmpty() && figures.get(figures.size() - 1) instanceof Integer order ? order : USUAL_ORDER;
    }
}
