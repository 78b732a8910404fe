package evenwood.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;

class DisplayTest {
    @Test
    void onLinuxTheEnvironmentNamesTheDisplay() {
        assertThat(Display.isThere("Linux", Map.of())).isFalse();
        assertThat(Display.isThere("Linux", Map.of("DISPLAY", " "))).isFalse();
        assertThat(Display.isThere("Linux", Map.of("DISPLAY", ":0"))).isTrue();
        assertThat(Display.isThere("Linux", Map.of("WAYLAND_DISPLAY", "wayland-0"))).isTrue();
    }

    @Test
    void otherSystemsAlwaysHaveOne() {
        assertThat(Display.isThere("Mac OS X", Map.of())).isTrue();
        assertThat(Display.isThere("Windows 11", Map.of())).isTrue();
    }
}
