package evenwood.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import evenwood.coach.Move;
import evenwood.coach.StoredMove;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Reads moves from a JSON file: an array of moves as {@code check --json} prints them, or the whole object it prints.
 *
 * <p>Only {@code kind} is needed of a move, and {@code frequencyHz} of a filter; unknown fields are passed over.
 */
public final class MovesFile {
    /** The order of a high-pass stands in its control's name: "High-pass 90 Hz, order 2". */
    private static final Pattern ORDER = Pattern.compile("order (\\d)");
    private static final int USUAL_ORDER = 2;

    private final String name;
    private final JsonParser json;

    private MovesFile(String name, JsonParser json) {
        this.name = name;
        this.json = json;
    }

    /** @throws BadMoves in one line, when there is no such file or it holds no moves */
    public static List<StoredMove> read(Path file) {
        String name = file.toString();
        try (JsonParser json = new JsonFactory().createParser(Files.readAllBytes(file))) {
            return new MovesFile(name, json).moves();
        } catch (NoSuchFileException missing) {
            throw new BadMoves("moves: " + name + " does not exist; check the spelling");
        } catch (JsonProcessingException problem) {
            throw new BadMoves("moves: " + name + " line " + (problem.getLocation() == null ? 1 : problem.getLocation().getLineNr())
                + " is no JSON (" + problem.getOriginalMessage().lines().findFirst().orElse("") + "); use what evenwood check --json prints");
        } catch (IOException problem) {
            throw new BadMoves("moves: " + name + " cannot be read (" + problem.getMessage() + "); check the file and its rights");
        }
    }

    private List<StoredMove> moves() throws IOException {
        JsonToken first = json.nextToken();
        if (first == JsonToken.START_ARRAY) {
            return array();
        }
        if (first == JsonToken.START_OBJECT) {
            while (json.nextToken() == JsonToken.FIELD_NAME) {
                String field = json.currentName();
                JsonToken value = json.nextToken();
                if (field.equals("moves") && value == JsonToken.START_ARRAY) {
                    return array();
                }
                json.skipChildren();
            }
        }
        throw new BadMoves("moves: " + name + " holds no moves; use what evenwood check --json prints, or its array \"moves\"");
    }

    private List<StoredMove> array() throws IOException {
        List<StoredMove> moves = new ArrayList<>();
        while (json.nextToken() == JsonToken.START_OBJECT) {
            moves.add(move(moves.size() + 1));
        }
        return moves;
    }

    private StoredMove move(int number) throws IOException {
        Map<String, Double> numbers = new HashMap<>();
        Map<String, String> words = new HashMap<>();
        while (json.nextToken() == JsonToken.FIELD_NAME) {
            String field = json.currentName();
            JsonToken value = json.nextToken();
            if (value.isNumeric()) {
                numbers.put(field, json.getDoubleValue());
            } else if (value == JsonToken.VALUE_STRING) {
                words.put(field, json.getText());
            } else {
                json.skipChildren();
            }
        }
        Move.Kind kind = kind(words.get("kind"), number);
        String control = words.getOrDefault("control", kind.id());
        Matcher order = ORDER.matcher(control);
        checked(numbers, number, kind);
        return new StoredMove(control, kind, optional(numbers, "frequencyHz"), optional(numbers, "q"),
            order.find() ? Math.max(1, Math.min(4, Integer.parseInt(order.group(1)))) : USUAL_ORDER, optional(numbers, "fromDb"),
            optional(numbers, "toDb"), optional(numbers, "changeDb"), Optional.ofNullable(words.get("from")), Optional.ofNullable(words.get("to")));
    }

    private Move.Kind kind(String word, int number) {
        return Arrays.stream(Move.Kind.values()).filter(kind -> kind.id().equals(word)).findFirst().orElseThrow(() ->
            new BadMoves("moves: " + name + ", move " + number + ": kind=" + word + ", but one of "
                + Arrays.stream(Move.Kind.values()).map(Move.Kind::id).collect(Collectors.joining(", ")) + " is needed"));
    }

    private void checked(Map<String, Double> numbers, int number, Move.Kind kind) {
        boolean filter = kind != Move.Kind.GAIN && kind != Move.Kind.VOLUME && kind != Move.Kind.WIRING;
        within(numbers, "frequencyHz", 5, 96_000, number, filter);
        within(numbers, "q", 0.05, 200, number, false);
        for (String db : new String[] {"fromDb", "toDb", "changeDb"}) {
            within(numbers, db, -140, 140, number, false);
        }
    }

    private void within(Map<String, Double> numbers, String field, double least, double most, int number, boolean needed) {
        Double value = numbers.get(field);
        if (value == null ? needed : !(value >= least && value <= most)) {
            throw new BadMoves("moves: " + name + ", move " + number + ": " + field + "=" + (value == null ? "missing" : value) + ", but "
                + least + " to " + most + " is needed");
        }
    }

    private static OptionalDouble optional(Map<String, Double> numbers, String field) {
        return numbers.containsKey(field) ? OptionalDouble.of(numbers.get(field)) : OptionalDouble.empty();
    }

    /** Something wrong with a file of moves; the message is the whole line to show. */
    public static final class BadMoves extends RuntimeException {
        private static final long serialVersionUID = 1L;

        BadMoves(String message) {
            super(message);
        }
    }
}
