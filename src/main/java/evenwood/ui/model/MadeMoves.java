package evenwood.ui.model;

import evenwood.coach.Move;
import evenwood.coach.StoredMove;
import evenwood.eq.EqChain;
import evenwood.rig.Dial;
import evenwood.rig.Setting;
import java.util.List;
import java.util.Optional;

/** Moves of the coach once they are made: something sound can pass, and where the controls stand then. */
final class MadeMoves {
    private static final int USUAL_ORDER = 2;
    private static final String OFF = "off";

    private MadeMoves() { }

    static EqChain chain(List<Move> moves) {
        return StoredMove.chain(moves.stream().map(MadeMoves::stored).toList());
    }

    /** Where a control stands once the move is made: where it says; decibels only where it names no position, for a learned control counts them otherwise. */
    static Setting afterwards(Setting setting, Move move) {
        Optional<Setting> said = move.to().filter(words -> !words.equals(OFF)).flatMap(words -> Setting.ofSaid(setting.control(), words));
        if (said.isPresent()) {
            return said.get();
        }
        Setting there = setting.control().switched() ? setting.switched(!move.to().map(OFF::equals).orElse(false)) : setting;
        Optional<Dial> gain = setting.control().gain();
        if (gain.isPresent() && move.toDb().isPresent()) {
            there = there.withGain(gain.get().settable(gain.get().positionOfDb(move.toDb().getAsDouble())));
        }
        Optional<Dial> frequency = setting.control().frequency();
        if (frequency.isPresent() && move.frequencyHz().isPresent()) {
            there = there.withFrequency(frequency.get().settable(frequency.get().positionOfHz(move.frequencyHz().getAsDouble())));
        }
        return there;
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
