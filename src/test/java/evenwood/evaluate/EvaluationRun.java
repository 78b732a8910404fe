package evenwood.evaluate;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * Runs every evaluation in the test classes: {@code mvn -q -Pevaluate verify}, or one class by its simple name:
 * {@code mvn -q -Pevaluate verify -Devaluation=DistortionEvaluation}. A class whose name does not end in Evaluation
 * (a fitting program) runs only when it is named. What an evaluation reads from system properties is given as
 * {@code -Devaluation.options=-Devaluate.stride=9}.
 */
public final class EvaluationRun {
    private static final Path CLASSES = Path.of("target", "test-classes");

    private EvaluationRun() { }

    public static void main(String[] args) throws Exception {
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        String wanted = args.length == 0 ? "" : args[0];
        for (Class<?> type : evaluations(wanted)) {
            out.println("## " + type.getSimpleName());
            ((Evaluation) type.getDeclaredConstructor().newInstance()).run(out);
            out.println();
        }
    }

    private static List<Class<?>> evaluations(String wanted) throws IOException, ClassNotFoundException {
        List<String> names;
        try (Stream<Path> files = Files.walk(CLASSES)) {
            names = files.map(file -> CLASSES.relativize(file).toString())
                .filter(name -> wanted.isEmpty() ? name.endsWith("Evaluation.class") : name.endsWith(java.io.File.separator + wanted + ".class"))
                .map(name -> name.replace(java.io.File.separatorChar, '.').replaceAll("\\.class$", "")).sorted().toList();
        }
        List<Class<?>> found = new java.util.ArrayList<>();
        for (String name : names) {
            Class<?> type = Class.forName(name);
            if (Evaluation.class.isAssignableFrom(type) && !type.isInterface()) {
                found.add(type);
            }
        }
        if (found.isEmpty()) {
            throw new IllegalArgumentException("evaluation: " + wanted + ", but no such evaluation is in " + CLASSES);
        }
        return found;
    }
}
