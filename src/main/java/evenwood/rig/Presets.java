package evenwood.rig;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * The shipped presets and the player's own; a file of the player's wins by its id.
 *
 * <p>The player's files lie in {@code instruments/} and so on under the configuration folder. The file's name is its id.
 */
public final class Presets {
    private static final String ENDING = ".yaml";

    private final Path ownFolder;

    public Presets(Path ownFolder) {
        this.ownFolder = ownFolder;
    }

    /** With the player's own folder where the system keeps such things. */
    public static Presets ofPlayer() {
        return new Presets(ConfigFolder.path().resolve("presets"));
    }

    /** All ids of a kind, in alphabetical order. */
    public List<String> ids(PresetKind kind) {
        Collection<String> ids = new TreeSet<>(shippedIds(kind));
        ids.addAll(idsIn(ownFolder.resolve(kind.folder())));
        return List.copyOf(ids);
    }

    /** @throws PresetProblem for an unknown id, with near matches, or a wrong file */
    public Instrument instrument(String id) {
        return Instrument.read(fields(PresetKind.INSTRUMENTS, id));
    }

    /** @throws PresetProblem for an unknown id, with near matches, or a wrong file */
    public ControlSet controls(String id) {
        return ControlSet.read(fields(PresetKind.CONTROLS, id));
    }

    /** @throws PresetProblem for an unknown id, with near matches, or a wrong file */
    public Pickup pickup(String id) {
        return Pickup.read(fields(PresetKind.PICKUPS, id));
    }

    /** @throws PresetProblem for an unknown id, with near matches, or a wrong file */
    public Cable cable(String id) {
        return Cable.read(fields(PresetKind.CABLES, id));
    }

    /** @throws PresetProblem for an unknown id, with near matches, or a wrong file */
    public Box box(String id) {
        return Box.read(fields(PresetKind.BOXES, id));
    }

    /** @throws PresetProblem for an unknown id, with near matches, or a wrong file */
    public Input input(String id) {
        return Input.read(fields(PresetKind.INPUTS, id));
    }

    /** @throws PresetProblem for an unknown id, with near matches, or a wrong file */
    public HuntTable hunt(String id) {
        return HuntTable.read(fields(PresetKind.HUNTS, id));
    }

    /** Everything that could be had: every box and cable. */
    public Gear shop() {
        return new Gear(ids(PresetKind.BOXES).stream().map(this::box).toList(), ids(PresetKind.CABLES).stream().map(this::cable).toList(), List.of());
    }

    /** Reads every preset there is. @throws PresetProblem for the first wrong one */
    public void verify() {
        for (String id : ids(PresetKind.INSTRUMENTS)) {
            instrument(id);
        }
        for (String id : ids(PresetKind.CONTROLS)) {
            controls(id);
        }
        ids(PresetKind.PICKUPS).forEach(this::pickup);
        ids(PresetKind.CABLES).forEach(this::cable);
        ids(PresetKind.BOXES).forEach(this::box);
        ids(PresetKind.INPUTS).forEach(this::input);
        ids(PresetKind.HUNTS).forEach(this::hunt);
    }

    /**
     * The preset's file as it stands, the player's own before ours.
     *
     * @throws PresetProblem for an unknown id, with near matches
     */
    public PresetText text(PresetKind kind, String id) {
        Path own = ownFile(kind, id);
        boolean plainId = id.matches("[A-Za-z0-9-]+");
        try {
            if (plainId && Files.isRegularFile(own)) {
                return new PresetText(own.toString(), Files.readString(own));
            }
            try (InputStream shipped = plainId ? Presets.class.getResourceAsStream(resource(kind) + "/" + id + ENDING) : null) {
                if (shipped == null) {
                    throw new PresetProblem("preset: no " + kind.folder() + " with the id " + id + NearMatches.hint(id, ids(kind))
                        + "; all ids: evenwood presets list");
                }
                return new PresetText("presets/" + kind.folder() + "/" + id + ENDING, new String(shipped.readAllBytes(), StandardCharsets.UTF_8));
            }
        } catch (IOException problem) {
            throw new PresetProblem("preset: " + own + " cannot be read (" + problem.getMessage() + "); check the file and its rights");
        }
    }

    /** Where a file of the player's own must lie to be used instead of ours. */
    public Path ownFile(PresetKind kind, String id) {
        return ownFolder.resolve(kind.folder()).resolve(id + ENDING);
    }

    /** What kind of preset this id names. @throws PresetProblem for an unknown id, with near matches */
    public PresetKind kindOf(String id) {
        List<String> all = new ArrayList<>();
        for (PresetKind kind : PresetKind.values()) {
            List<String> ids = ids(kind);
            if (ids.contains(id)) {
                return kind;
            }
            all.addAll(ids);
        }
        throw new PresetProblem("preset: nothing has the id " + id + NearMatches.hint(id, all) + "; all ids: evenwood presets list");
    }

    private YamlFields fields(PresetKind kind, String id) {
        PresetText text = text(kind, id);
        return checked(YamlFields.of(text.file(), text.yaml()), id);
    }

    private static YamlFields checked(YamlFields fields, String id) {
        if (!fields.text("id").equals(id)) {
            throw fields.wrong("id", fields.text("id"), "it must be the file's name, " + id);
        }
        return fields;
    }

    private static List<String> shippedIds(PresetKind kind) {
        try {
            URI home = Presets.class.getResource(resource(kind)).toURI();
            if (!home.getScheme().equals("jar")) {
                return idsIn(Path.of(home));
            }
            try (FileSystem jar = FileSystems.newFileSystem(home, Map.of())) {
                return idsIn(jar.getPath(resource(kind)));
            }
        } catch (IOException | URISyntaxException problem) {
            throw new IllegalStateException("presets: the program's own " + kind.folder() + " cannot be listed", problem);
        }
    }

    private static List<String> idsIn(Path folder) {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).filter(name -> name.endsWith(ENDING))
                .map(name -> name.substring(0, name.length() - ENDING.length())).sorted().toList();
        } catch (IOException problem) {
            throw new PresetProblem("presets: the folder " + folder + " cannot be listed (" + problem.getMessage() + "); check its rights");
        }
    }

    private static String resource(PresetKind kind) {
        return "/presets/" + kind.folder();
    }
}
