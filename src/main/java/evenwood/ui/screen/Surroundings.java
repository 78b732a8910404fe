package evenwood.ui.screen;

import evenwood.ui.model.Choices;
import evenwood.ui.model.CurrentTake;
import evenwood.ui.model.GuideModel;
import evenwood.ui.model.HuntModel;
import evenwood.ui.model.JournalModel;
import evenwood.ui.model.LearnModel;
import evenwood.ui.model.PracticeLog;
import evenwood.ui.model.RigModel;
import evenwood.ui.model.Words;
import evenwood.ui.paint.Ink;
import java.util.function.Consumer;

/**
 * What every page is built with. Another language, theme or text size makes a new one, and all pages anew.
 *
 * @param take    what is heard
 * @param rig     what the player owns
 * @param guide   the guided check, wherever it stands
 * @param learn   a control being learned, wherever it stands
 * @param hunt    the noise hunt, wherever it stands
 * @param journal what was kept
 * @param practice whether live playing is written down
 * @param choices what is remembered between runs
 * @param words   everything said
 * @param ink     colours and letters
 * @param open    opens the page with an id
 */
public record Surroundings(CurrentTake take, RigModel rig, GuideModel guide, LearnModel learn, HuntModel hunt, JournalModel journal, PracticeLog practice, Choices choices,
                           Words words, Ink ink, Consumer<String> open) { }
