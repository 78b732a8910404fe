package evenwood.rig;

import java.util.Map;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/**
 * A preset's file.
 *
 * @param file where it was found
 * @param yaml what stands in it
 */
public record PresetText(String file, String yaml) {
    /** Its fields as plain maps, lists, texts and numbers, for whoever only shows them. */
    @SuppressWarnings("unchecked")
    public Map<String, Object> fields() {
        return (Map<String, Object>) new Load(LoadSettings.builder().setLabel(file).build()).loadFromString(yaml);
    }
}
