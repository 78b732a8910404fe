package evenwood.rig;

import java.util.List;
import java.util.Optional;

/** What the signal passes, in order, and the input where it ends. */
public record Line(List<Link> links, PluggedInput input) {
    public Line {
        links = List.copyOf(links);
    }

    public List<PluggedBox> boxes() {
        return links.stream().filter(PluggedBox.class::isInstance).map(PluggedBox.class::cast).toList();
    }

    public Optional<PluggedBox> boxWithThru() {
        return boxes().stream().filter(plugged -> plugged.box().thru()).findFirst();
    }
}
