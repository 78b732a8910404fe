package evenwood.ui.screen;

import java.io.File;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.scene.Node;
import javafx.stage.FileChooser;

/** Asks where something is to be saved or read from, and remembers the folder. */
final class SaveAs {
    private static final String FOLDER = "save.folder";

    private SaveAs() { }

    /** @param title key of the window's title  @param name proposed, without ending  @param endings such as {@code .pdf}, the usual one first */
    static Optional<Path> ask(Surroundings around, Node from, String title, String name, List<String> endings) {
        FileChooser chooser = chooser(around, title, endings);
        chooser.setInitialFileName(name + endings.get(0));
        return remembered(around, chooser.showSaveDialog(from.getScene().getWindow())).map(file -> withEnding(file, chooser.getSelectedExtensionFilter(), endings));
    }

    /** Asks for a file that is there. */
    static Optional<Path> open(Surroundings around, Node from, String title, String ending) {
        return remembered(around, chooser(around, title, List.of(ending)).showOpenDialog(from.getScene().getWindow()));
    }

    private static FileChooser chooser(Surroundings around, String title, List<String> endings) {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(around.words().say(title));
        endings.forEach(ending -> chooser.getExtensionFilters().add(
            new FileChooser.ExtensionFilter(around.words().say("save.ending." + ending.substring(1)), "*" + ending)));
        File folder = new File(around.choices().get(FOLDER, System.getProperty("user.home", ".")));
        if (folder.isDirectory()) {
            chooser.setInitialDirectory(folder);
        }
        return chooser;
    }

    private static Optional<Path> remembered(Surroundings around, File chosen) {
        if (chosen != null) {
            around.choices().put(FOLDER, chosen.getParent());
        }
        return Optional.ofNullable(chosen).map(File::toPath);
    }

    /** Some systems leave the ending to the program. */
    private static Path withEnding(Path file, FileChooser.ExtensionFilter filter, List<String> endings) {
        String name = file.getFileName().toString();
        boolean has = endings.stream().anyMatch(name.toLowerCase(Locale.ROOT)::endsWith);
        String ending = filter == null ? endings.get(0) : filter.getExtensions().get(0).substring(1);
        return has ? file : file.resolveSibling(name + ending);
    }
}
