package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * Makes the table of standard cases in {@code docs/accuracy.md} and fails when it is no longer what the meters read, so that
 * a reading that moves by a thousandth is seen. The new table is then in {@code target/accuracy/level-standards.md}.
 */
class LevelAccuracyTest {
    private static final int[] RATES_HZ = {44_100, 48_000, 96_000};
    private static final String START = "<!-- level-standards: start -->\n";
    private static final String END = "<!-- level-standards: end -->\n";

    @Test
    void theTableInTheDocsIsWhatTheMetersRead() throws IOException {
        String table = table();
        Path made = Path.of("target", "accuracy", "level-standards.md");
        Files.createDirectories(made.getParent());
        Files.writeString(made, table);
        String docs = Files.readString(Path.of("docs", "accuracy.md"));
        assertThat(docs).contains(START, END);
        assertThat(docs.substring(docs.indexOf(START) + START.length(), docs.indexOf(END))).isEqualTo(table);
    }

    private static String table() {
        List<String> lines = new ArrayList<>();
        lines.add("| case | what is read | required | ours at 44.1 kHz | at 48 kHz | at 96 kHz |");
        lines.add("|---|---|---|---|---|---|");
        rows(EbuLoudnessCases::at, lines);
        rows(EbuTruePeakCases::at, lines);
        return String.join("\n", lines) + "\n";
    }

    private static void rows(IntFunction<List<StandardCase>> cases, List<String> lines) {
        Map<String, List<StandardCase>> rows = grouped(cases.apply(RATES_HZ[0]));
        for (String row : rows.keySet()) {
            String ours = Arrays.stream(RATES_HZ).mapToObj(rate -> ours(grouped(cases.apply(rate)).get(row))).collect(Collectors.joining(" | "));
            lines.add("| " + row.replace(";", " | ") + " | " + required(rows.get(row)) + " | " + ours + " |");
        }
    }

    /** The signals of one case that are read the same way make one row. */
    private static Map<String, List<StandardCase>> grouped(List<StandardCase> cases) {
        return cases.stream().collect(Collectors.groupingBy(line -> line.group() + ";" + line.name().replaceAll(" signal [0-9]+", ""),
            LinkedHashMap::new, Collectors.toList()));
    }

    private static String required(List<StandardCase> row) {
        StandardCase first = row.get(0);
        StandardCase last = row.get(row.size() - 1);
        String value = first.expected() == last.expected() ? number("%.1f", first.expected())
            : number("%.1f", first.expected()) + " … " + number("%.1f", last.expected());
        String tolerance = first.plus() == first.minus() ? "±" + first.plus() : "+" + first.plus() + " / −" + first.minus();
        return value + " " + tolerance + " " + first.unit() + (row.size() == 1 ? "" : ", " + row.size() + " signals");
    }

    /** One reading as it is; of many how far they lie from what is required. */
    private static String ours(List<StandardCase> row) {
        if (row.size() == 1) {
            return number("%.3f", row.get(0).ours());
        }
        double lowest = row.stream().mapToDouble(StandardCase::difference).min().orElseThrow();
        double highest = row.stream().mapToDouble(StandardCase::difference).max().orElseThrow();
        return "off by " + number("%+.3f", lowest) + " … " + number("%+.3f", highest);
    }

    private static String number(String format, double value) {
        return String.format(Locale.ROOT, format, value).replace('-', '−');
    }
}
