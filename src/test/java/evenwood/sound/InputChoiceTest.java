package evenwood.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

class InputChoiceTest {
    private static final LiveInput BUILT_IN = new LiveInput("Built-in Microphone", "the lid of this computer", 1, List.of(44_100));
    private static final LiveInput BOX = new LiveInput("USB Audio Box", "two inputs", 2, List.of(48_000));
    private static final LiveInput BOX_TWO = new LiveInput("USB Audio Box #2", "two more inputs", 2, List.of());
    private static final List<LiveInput> ALL = List.of(BUILT_IN, BOX, BOX_TWO);

    @Test
    void withoutAWishTheFirstIsTaken() {
        assertThat(InputChoice.of(ALL, null)).isSameAs(BUILT_IN);
        assertThat(InputChoice.of(ALL, " ")).isSameAs(BUILT_IN);
    }

    @Test
    void theExactNameWinsOverAPartOfAnother() {
        assertThat(InputChoice.of(ALL, "USB Audio Box")).isSameAs(BOX);
        assertThat(InputChoice.of(ALL, "usb audio box")).isSameAs(BOX);
    }

    @Test
    void aPartThatOnlyOneHasIsEnough() {
        assertThat(InputChoice.of(ALL, "micro")).isSameAs(BUILT_IN);
        assertThat(InputChoice.of(ALL, "#2")).isSameAs(BOX_TWO);
        assertThat(InputChoice.of(ALL, "the lid")).as("words of the description").isSameAs(BUILT_IN);
    }

    @Test
    void aPartThatTwoHaveIsAQuestion() {
        assertThatThrownBy(() -> InputChoice.of(ALL, "box")).isInstanceOf(SoundProblem.class)
            .hasMessage("listen: input \"box\" could be any of 2; choose one of: \"USB Audio Box\", \"USB Audio Box #2\"");
    }

    @Test
    void aWrongNameListsTheNearestFirst() {
        assertThatThrownBy(() -> InputChoice.of(ALL, "USB Adio Bocks")).isInstanceOf(SoundProblem.class)
            .hasMessage("listen: there is no input \"USB Adio Bocks\"; choose one of: "
                + "\"USB Audio Box\", \"USB Audio Box #2\", \"Built-in Microphone\"");
    }

    @Test
    void noInputAtAllSaysWhatToDo() {
        assertThatThrownBy(() -> InputChoice.of(List.of(), "x")).isInstanceOf(SoundProblem.class)
            .hasMessageContaining("no input was found").hasMessageContaining("plug in");
    }
}
