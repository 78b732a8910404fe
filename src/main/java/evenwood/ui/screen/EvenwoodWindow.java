package evenwood.ui.screen;

import evenwood.rig.ConfigFolder;
import evenwood.rig.Presets;
import evenwood.ui.model.Choices;
import evenwood.ui.model.CurrentTake;
import evenwood.ui.model.RigModel;
import java.util.logging.Level;
import java.util.logging.Logger;
import javafx.application.Application;
import javafx.stage.Stage;

/** The program's window from its opening to its closing. */
public final class EvenwoodWindow extends Application {
    /** The toolkit's one complaint when started from a single jar is not for players. */
    private static final Logger TOOLKIT = Logger.getLogger("javafx");
    private CurrentTake take;

    /** Opens the window and returns when it is closed. @return false when this machine cannot show it */
    public static boolean open() {
        TOOLKIT.setLevel(Level.SEVERE);
        try {
            launch(EvenwoodWindow.class);
            return true;
        } catch (UnsupportedOperationException | LinkageError | IllegalStateException noDisplay) {
            return false;
        } catch (RuntimeException problem) {
            if (problem.getCause() instanceof UnsupportedOperationException) {
                return false;
            }
            throw problem;
        }
    }

    @Override
    public void start(Stage stage) {
        Choices choices = new Choices(ConfigFolder.path().resolve("window.properties"));
        RigModel rig = new RigModel(Presets.ofPlayer(), choices);
        take = new CurrentTake(rig::inUse);
        new Shell(stage, take, rig, choices).show();
    }

    @Override
    public void stop() {
        take.close();
    }
}
