package evenwood.report;

import java.util.List;

/** Breaks a text between words; further lines are indented under the first one's. */
final class TextWrap {
    private TextWrap() { }

    static void wrap(List<String> lines, int widthCharacters, String start, String text) {
        StringBuilder line = new StringBuilder(start);
        boolean empty = true;
        for (String word : text.split(" ")) {
            if (!empty && line.length() + 1 + word.length() > widthCharacters) {
                lines.add(line.toString());
                line = new StringBuilder(" ".repeat(start.length()));
                empty = true;
            }
            line.append(empty ? "" : " ").append(word);
            empty = false;
        }
        lines.add(line.toString());
    }
}
