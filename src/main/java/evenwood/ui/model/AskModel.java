package evenwood.ui.model;

import evenwood.rig.PresetKind;
import evenwood.rig.Presets;
import evenwood.wiring.Question;
import evenwood.wiring.RigQuestions;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The questions about how the instrument is plugged in, one after the other, with a way back. The first two, name and
 * instrument, are answered already.
 *
 * <p>Thread: the screen's.
 */
public final class AskModel {
    private static final String NAME = "-";
    private static final int GIVEN = 2;

    private final WiringModel wiring;
    private final RigQuestions questions;
    private final List<String> answers = new ArrayList<>();
    private final Map<String, String> names = new HashMap<>();
    private Optional<Question> question;

    public AskModel(RigModel rig) {
        wiring = rig.wiring();
        questions = new RigQuestions(wiring.presets());
        answers.addAll(List.of(NAME, rig.chosen(RigModel.Part.INSTRUMENT)));
        question = questions.next(answers);
    }

    /** Empty when all was answered. */
    public Optional<Question> question() {
        return question;
    }

    /** Which one it is, from 1. */
    public int number() {
        return answers.size() - GIVEN + 1;
    }

    /** @return whether it was understood */
    public boolean answer(String answer) {
        boolean understood = question.map(each -> each.accepts(answer)).orElse(false);
        if (understood) {
            answers.add(answer);
            question = questions.next(answers);
        }
        return understood;
    }

    public boolean canGoBack() {
        return answers.size() > GIVEN;
    }

    public void back() {
        if (canGoBack()) {
            answers.remove(answers.size() - 1);
            question = questions.next(answers);
        }
    }

    /** The rig file. */
    public String rig() {
        return questions.rig(answers);
    }

    /** The question in words. */
    public String words(Question question, Words words) {
        Object[] figures = question.figures().stream().map(figure -> name(figure, words)).toArray();
        return words.say("wiring." + question.key(), figures);
    }

    /** An answer to choose in words. */
    public String words(Question question, Question.Option option, Words words) {
        for (String kind : List.of("pickups", "cables", "boxes", "inputs", "instruments")) {
            if (words.has("preset." + kind + "." + option.id())) {
                return ChainPicture.titled(words.say("preset." + kind + "." + option.id()));
            }
        }
        return ChainPicture.titled(words.sayOr("wiring." + question.key() + "." + option.id(), option.name()));
    }

    /** Figures are numbers and names of boxes and inputs; names are said in the player's language. */
    private Object name(Object figure, Words words) {
        return figure instanceof String own ? names(words).getOrDefault(own, own) : figure;
    }

    private Map<String, String> names(Words words) {
        if (names.isEmpty()) {
            Presets presets = wiring.presets();
            presets.ids(PresetKind.BOXES).stream().map(presets::box).forEach(box -> names.put(box.name(), words.sayOr("preset.boxes." + box.id(), box.name())));
            presets.ids(PresetKind.INPUTS).stream().map(presets::input).forEach(input -> names.put(input.name(), words.sayOr("preset.inputs." + input.id(), input.name())));
        }
        return names;
    }
}
