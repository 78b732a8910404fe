package evenwood.ui.model;

import evenwood.rig.CableRun;
import evenwood.rig.Connection;
import evenwood.rig.Link;
import evenwood.rig.PluggedBox;
import evenwood.wiring.Alternative;
import evenwood.wiring.Alternatives;
import evenwood.wiring.ChainReport;
import evenwood.wiring.Device;
import evenwood.wiring.WiringAdvice;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Better ways to plug in.
 *
 * @param atHand   with what lies about
 * @param buyFirst with one thing more
 */
public record WiringBetter(Optional<Way> atHand, Optional<Way> buyFirst) {
    /** @param toBuy what is not at hand; empty when everything is  @param chain in words, from the pickup on */
    public record Way(String toBuy, String chain, Connection connection) { }

    /** Takes its time: tries every way there is. */
    public static WiringBetter of(ChainReport report, WiringModel wiring, Words words) {
        WiringAdvice advice = Alternatives.of(report, wiring.presets().shop());
        GearNames names = new GearNames(words);
        return new WiringBetter(advice.atHand().map(each -> way(each, names, wiring, words)), advice.buyFirst().map(each -> way(each, names, wiring, words)));
    }

    private static Way way(Alternative better, GearNames names, WiringModel wiring, Words words) {
        Connection connection = better.report().connection();
        List<String> things = new ArrayList<>(List.of(names.of(new Device.Source(connection.pickup()))));
        for (Link link : connection.main().links()) {
            things.add(link instanceof CableRun run ? names.of(run) : standing(names, new Device.Between((PluggedBox) link)));
        }
        things.add(standing(names, new Device.End(connection.main().input())));
        String buy = better.toBuy().stream().findFirst().map(own -> wiring.presets().shop().boxes().stream().filter(box -> box.name().equals(own))
            .findFirst().map(box -> words.sayOr("preset.boxes." + box.id(), own)).orElseGet(() -> wiring.presets().shop().cables().stream()
                .filter(cable -> cable.name().equals(own)).findFirst().map(cable -> words.sayOr("preset.cables." + cable.id(), own)).orElse(own))).orElse("");
        return new Way(buy, String.join(words.say("wiring.arrow"), things), connection);
    }

    private static String standing(GearNames names, Device device) {
        List<String> set = names.standing(device);
        return names.of(device) + (set.isEmpty() ? "" : " (" + String.join(", ", set) + ")");
    }
}
