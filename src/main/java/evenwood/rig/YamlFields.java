package evenwood.rig;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/**
 * The fields of one YAML mapping, read by name and kind; every mistake names file, line and field.
 *
 * <p>A field that is asked for and not there, or there and never asked for, is a mistake too: call {@link #nothingElse()}
 * when all were read.
 */
final class YamlFields {
    private static final int LONGEST_FILE_CHARACTERS = 1_000_000;

    private final String file;
    private final String path;
    private final int line;
    private final Map<String, Node> fields = new LinkedHashMap<>();
    private final Set<String> asked = new java.util.LinkedHashSet<>();

    private YamlFields(String file, String path, Node node) {
        this.file = file;
        this.path = path;
        this.line = lineOf(node);
        if (!(node instanceof MappingNode mapping)) {
            throw PresetProblem.at(file, line, path.isEmpty() ? "the whole file" : path, "found " + kind(node), "fields with values are expected");
        }
        for (NodeTuple tuple : mapping.getValue()) {
            fields.put(((ScalarNode) tuple.getKeyNode()).getValue(), tuple.getValueNode());
        }
    }

    static YamlFields of(String file, String text) {
        if (text.length() > LONGEST_FILE_CHARACTERS) {
            throw new PresetProblem(file + ": " + text.length() + " characters, but a preset has at most "
                + LONGEST_FILE_CHARACTERS + "; is it the right file?");
        }
        try {
            LoadSettings settings = LoadSettings.builder().setLabel(file).setAllowDuplicateKeys(false).setMaxAliasesForCollections(10).build();
            Node node = new Compose(settings).composeString(text)
                .orElseThrow(() -> new PresetProblem(file + ": the file is empty, but a preset is expected"));
            return new YamlFields(file, "", node);
        } catch (MarkedYamlEngineException problem) {
            int at = problem.getProblemMark().map(mark -> mark.getLine() + 1).orElse(1);
            throw PresetProblem.at(file, at, "YAML", String.valueOf(problem.getProblem()), "well-formed YAML is expected");
        } catch (YamlEngineException problem) {
            throw new PresetProblem(file + ": " + String.valueOf(problem.getMessage()).lines().findFirst().orElse("not readable")
                + ", but well-formed YAML is expected");
        }
    }

    boolean has(String field) {
        asked.add(field);
        return fields.containsKey(field);
    }

    int line() {
        return line;
    }

    String text(String field) {
        return scalar(field, required(field, "a text is needed"));
    }

    Optional<String> optionalText(String field) {
        return has(field) ? Optional.of(text(field)) : Optional.empty();
    }

    double number(String field, double least, double most, String unit) {
        return number(pathOf(field), required(field, "a number in " + unit + " is needed"), least, most, unit);
    }

    OptionalDouble optionalNumber(String field, double least, double most, String unit) {
        return has(field) ? OptionalDouble.of(number(field, least, most, unit)) : OptionalDouble.empty();
    }

    boolean flag(String field) {
        Node node = required(field, "true or false is needed");
        String text = scalar(field, node);
        if (!text.equals("true") && !text.equals("false")) {
            throw wrong(field, node, text, "true or false is needed");
        }
        return text.equals("true");
    }

    boolean flag(String field, boolean ifAbsent) {
        return has(field) ? flag(field) : ifAbsent;
    }

    /** A word that is one of an enum's, written in lower case with hyphens. */
    <E extends Enum<E>> E choice(String field, Class<E> kinds) {
        Node node = required(field, "one of " + words(kinds) + " is needed");
        String text = scalar(field, node);
        return Arrays.stream(kinds.getEnumConstants()).filter(kind -> word(kind).equals(text)).findFirst()
            .orElseThrow(() -> wrong(field, node, text, "one of " + words(kinds) + " is needed"));
    }

    YamlFields part(String field) {
        return new YamlFields(file, pathOf(field), required(field, "a group of fields is needed"));
    }

    /** Whether the field is a group of fields and not a single value or list. */
    boolean isPart(String field) {
        return fields.get(field) instanceof MappingNode;
    }

    List<YamlFields> parts(String field) {
        List<YamlFields> parts = new ArrayList<>();
        for (Node item : items(field)) {
            parts.add(new YamlFields(file, pathOf(field) + "[" + (parts.size() + 1) + "]", item));
        }
        return parts;
    }

    List<Double> numbers(String field, double least, double most, String unit) {
        List<Double> numbers = new ArrayList<>();
        for (Node item : items(field)) {
            numbers.add(number(pathOf(field) + "[" + (numbers.size() + 1) + "]", item, least, most, unit));
        }
        return numbers;
    }

    List<String> texts(String field) {
        return items(field).stream().map(item -> scalar(field, item)).toList();
    }

    /** A mistake of meaning that only the caller can see. */
    PresetProblem wrong(String field, String found, String allowed) {
        return wrong(field, fields.get(field), found, allowed);
    }

    void nothingElse() {
        for (Map.Entry<String, Node> field : fields.entrySet()) {
            if (!asked.contains(field.getKey())) {
                throw PresetProblem.at(file, lineOf(field.getValue()), pathOf(field.getKey()), "unknown field",
                    "only " + String.join(", ", asked) + " are known here" + NearMatches.hint(field.getKey(), asked));
            }
        }
    }

    private List<Node> items(String field) {
        Node node = required(field, "a list is needed");
        if (!(node instanceof SequenceNode list)) {
            throw wrong(field, node, "found " + kind(node), "a list is needed");
        }
        return list.getValue();
    }

    private Node required(String field, String needed) {
        asked.add(field);
        Node node = fields.get(field);
        if (node == null) {
            throw PresetProblem.at(file, line, pathOf(field), "missing", needed);
        }
        return node;
    }

    private String scalar(String field, Node node) {
        if (!(node instanceof ScalarNode scalar)) {
            throw wrong(field, node, "found " + kind(node), "one value is needed");
        }
        return scalar.getValue();
    }

    private double number(String where, Node node, double least, double most, String unit) {
        String text = node instanceof ScalarNode scalar ? scalar.getValue() : kind(node);
        String allowed = "a number from " + plain(least) + " to " + plain(most) + " in " + unit + " is needed";
        try {
            double number = Double.parseDouble(text);
            if (number >= least && number <= most) {
                return number;
            }
        } catch (NumberFormatException notANumber) {
            // Falls through to the sentence that says what is allowed.
        }
        throw PresetProblem.at(file, lineOf(node), where, text, allowed);
    }

    private PresetProblem wrong(String field, Node node, String found, String allowed) {
        return PresetProblem.at(file, node == null ? line : lineOf(node), pathOf(field), found, allowed);
    }

    private String pathOf(String field) {
        return path.isEmpty() ? field : path + "." + field;
    }

    private static int lineOf(Node node) {
        return node.getStartMark().map(mark -> mark.getLine() + 1).orElse(1);
    }

    private static String kind(Node node) {
        return node instanceof MappingNode ? "a group of fields" : node instanceof SequenceNode ? "a list" : "a single value";
    }

    static String word(Enum<?> kind) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static String words(Class<? extends Enum<?>> kinds) {
        return String.join(", ", Arrays.stream(kinds.getEnumConstants()).map(YamlFields::word).toList());
    }

    private static String plain(double number) {
        return number == Math.rint(number) && Math.abs(number) < 1e15 ? Long.toString((long) number) : Double.toString(number);
    }
}
