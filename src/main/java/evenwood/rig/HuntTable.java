package evenwood.rig;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What may cause noise, and what trials tell about it.
 *
 * @param id        such as {@code noise}
 * @param name      for people
 * @param causes    what may be the matter
 * @param trials    what may be changed, one thing at a time
 * @param unlikely  how much rarer a cause is when the rig lacks what it needs; a rig file may not say everything
 * @param otherwise what a trial does when it has nothing to do with the cause: now and then something, by chance
 * @param unlisted  what is to be expected of a cause that nobody thought of
 * @param source    where the numbers are from
 */
public record HuntTable(String id, String name, List<Cause> causes, List<Trial> trials, double unlikely, Chance otherwise, Unlisted unlisted, String source) {
    /** Nothing in a table is quite impossible or quite certain. */
    private static final double LEAST = 0.001;

    /** The parts of noise that are measured. */
    public enum Part { HUM, BUZZ, HISS, TONE }

    /** What a rig may have: strings, a volume on the instrument, a ground lift that is off, a box with a mains adapter, ... */
    public enum Need {
        STRINGS, SOURCE_VOLUME, GROUND_LIFT, MAINS_BOX, COMPUTER, OWN_BATTERY, SEVERAL_EARTHS, SEVERAL_OUTLETS, EARLIER_GAIN, PREAMP, SIGNAL_INPUT;

        String id() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /**
     * @param prior      how often it is met, against the others
     * @param needs      what the rig must have for it
     * @param noticeable how often each part of its noise can be noticed
     * @param source     where the numbers are from
     */
    public record Cause(String id, double prior, Set<Need> needs, Map<Part, Double> noticeable, String source) {
        public Cause {
            needs = Set.copyOf(needs);
            noticeable = Map.copyOf(noticeable);
        }
    }

    /**
     * @param needs    what the rig must have for it
     * @param outcomes by the cause's id; a cause not named behaves as {@code otherwise}
     * @param source   where the numbers are from
     */
    public record Trial(String id, Set<Need> needs, Map<String, Chance> outcomes, String source) {
        public Trial {
            needs = Set.copyOf(needs);
            outcomes = Map.copyOf(outcomes);
        }
    }

    /**
     * A cause that is not in the table, so that the others need not explain everything.
     *
     * @param prior      how often, against the listed ones together
     * @param noticeable how often any part of its noise can be noticed
     * @param any        what any trial does to it
     */
    public record Unlisted(double prior, double noticeable, Chance any) { }

    /** How often the noise all but goes, falls by some decibels, rises; the rest of the times it stays. */
    public record Chance(double cures, double falls, double rises) {
        public double stays() {
            return 1 - cures - falls - rises;
        }
    }

    public HuntTable {
        causes = List.copyOf(causes);
        trials = List.copyOf(trials);
    }

    public Chance chance(Trial trial, Cause cause) {
        return trial.outcomes().getOrDefault(cause.id(), otherwise);
    }

    public Optional<Trial> trial(String trialId) {
        return trials.stream().filter(trial -> trial.id().equals(trialId)).findFirst();
    }

    static HuntTable read(YamlFields fields) {
        List<Cause> causes = fields.parts("causes").stream().map(HuntTable::cause).toList();
        Set<String> known = new HashSet<>(causes.stream().map(Cause::id).toList());
        HuntTable table = new HuntTable(fields.text("id"), fields.text("name"), causes,
            fields.parts("trials").stream().map(each -> trial(each, known)).toList(),
            fields.number("unlikely", LEAST, 1, "a part of 1"), chance(fields.part("otherwise")), unlisted(fields.part("unlisted")), fields.text("source"));
        fields.nothingElse();
        return table;
    }

    private static Unlisted unlisted(YamlFields fields) {
        Unlisted unlisted = new Unlisted(fields.number("prior", LEAST, 1 - LEAST, "a part of 1"), fields.number("noticeable", LEAST, 1 - LEAST, "a part of 1"),
            chance(fields.part("any")));
        fields.nothingElse();
        return unlisted;
    }

    private static Cause cause(YamlFields fields) {
        YamlFields parts = fields.part("noticeable");
        Map<Part, Double> noticeable = new EnumMap<>(Part.class);
        for (Part part : Part.values()) {
            noticeable.put(part, parts.number(part.name().toLowerCase(Locale.ROOT), LEAST, 1 - LEAST, "a part of 1"));
        }
        parts.nothingElse();
        Cause cause = new Cause(fields.text("id"), fields.number("prior", 1e-6, 1, "a part of 1"), needs(fields), noticeable, fields.text("source"));
        fields.nothingElse();
        return cause;
    }

    private static Trial trial(YamlFields fields, Set<String> causes) {
        Map<String, Chance> outcomes = new LinkedHashMap<>();
        for (YamlFields outcome : fields.parts("outcomes")) {
            String cause = outcome.text("cause");
            if (!causes.contains(cause)) {
                throw outcome.wrong("cause", cause, "it must be one of the causes" + NearMatches.hint(cause, causes));
            }
            outcomes.put(cause, chance(outcome));
        }
        Trial trial = new Trial(fields.text("id"), needs(fields), outcomes, fields.text("source"));
        fields.nothingElse();
        return trial;
    }

    private static Set<Need> needs(YamlFields fields) {
        Set<Need> needs = EnumSet.noneOf(Need.class);
        if (fields.has("needs")) {
            List<String> words = Arrays.stream(Need.values()).map(Need::id).toList();
            for (String word : fields.texts("needs")) {
                if (!words.contains(word)) {
                    throw fields.wrong("needs", word, "it must be one of " + String.join(", ", words) + NearMatches.hint(word, Set.copyOf(words)));
                }
                needs.add(Need.values()[words.indexOf(word)]);
            }
        }
        return needs;
    }

    private static Chance chance(YamlFields fields) {
        Chance chance = new Chance(fields.number("cures", LEAST, 1 - LEAST, "a part of 1"), fields.number("falls", LEAST, 1 - LEAST, "a part of 1"),
            fields.number("rises", LEAST, 1 - LEAST, "a part of 1"));
        if (chance.stays() < LEAST) {
            throw fields.wrong("cures", String.valueOf(chance.cures()), "cures, falls and rises together must stay under 1");
        }
        fields.nothingElse();
        return chance;
    }
}
