package evenwood.rig;

import java.util.List;

/** What lies about: gear a player has, plugged in or not. */
public record Gear(List<Box> boxes, List<Cable> cables, List<Input> inputs) {
    public static final Gear NOTHING = new Gear(List.of(), List.of(), List.of());

    public Gear {
        boxes = List.copyOf(boxes);
        cables = List.copyOf(cables);
        inputs = List.copyOf(inputs);
    }
}
