package evenwood.coach.hunt;

import evenwood.rig.Box;
import evenwood.rig.Connection;
import evenwood.rig.HuntTable.Need;
import evenwood.rig.Input;
import evenwood.rig.Line;
import evenwood.rig.Pickup;
import evenwood.rig.PluggedBox;
import evenwood.rig.Power;
import evenwood.rig.Rig;
import java.util.Collections;
import java.util.EnumSet;
import java.util.Set;

/**
 * What a rig has that causes and trials of a noise hunt need.
 *
 * <p>Limits: a rig file ends at the input; that a mixer or a computer goes on to other mains plugs is taken for granted.
 */
public final class RigFacts {
    /** Nobody said how the instrument is plugged in: everything may be there. */
    public static final Set<Need> ALL = Collections.unmodifiableSet(EnumSet.allOf(Need.class));

    private final Connection connection;
    private final Line line;
    private final Set<Need> facts = EnumSet.noneOf(Need.class);

    private RigFacts(Connection connection) {
        this.connection = connection;
        line = connection.main();
    }

    /** {@link #ALL} when the rig does not say how it is plugged in. */
    public static Set<Need> of(Rig rig) {
        return rig.connection().map(connection -> new RigFacts(connection).gathered(!rig.instrument().courses().isEmpty())).orElse(ALL);
    }

    private Set<Need> gathered(boolean strings) {
        Pickup.Kind kind = connection.pickup().kind();
        Input.Device end = line.input().input().device();
        boolean computer = end == Input.Device.INTERFACE;
        boolean furtherOn = computer || end == Input.Device.MIXER;
        add(Need.STRINGS, strings && !kind.isMicrophone());
        add(Need.SOURCE_VOLUME, kind == Pickup.Kind.ACTIVE || kind == Pickup.Kind.MAGNETIC);
        add(Need.GROUND_LIFT, line.boxes().stream().anyMatch(each -> each.box().groundLift() && !each.groundLift()));
        add(Need.MAINS_BOX, line.boxes().stream().anyMatch(RigFacts::hasAdapter));
        add(Need.COMPUTER, computer);
        add(Need.OWN_BATTERY, computer || end == Input.Device.RECORDER);
        add(Need.SEVERAL_EARTHS, furtherOn || earths() > 1);
        add(Need.SEVERAL_OUTLETS, !connection.sameOutlet().orElse(false) && (furtherOn || mainsPlugs() > 1));
        add(Need.EARLIER_GAIN, kind == Pickup.Kind.ACTIVE || line.boxes().stream().anyMatch(each -> each.box().gain().mostDb() > each.gainDb()));
        add(Need.PREAMP, kind == Pickup.Kind.ACTIVE || line.boxes().stream().anyMatch(each -> !each.box().isPassive()));
        add(Need.SIGNAL_INPUT, end != Input.Device.CABINET);
        return Collections.unmodifiableSet(facts);
    }

    private void add(Need need, boolean there) {
        if (there) {
            facts.add(need);
        }
    }

    private static boolean hasAdapter(PluggedBox plugged) {
        Box.Kind kind = plugged.box().kind();
        return plugged.powered() == Power.MAINS && (kind == Box.Kind.PREAMP || kind == Box.Kind.ACTIVE_DI);
    }

    private long earths() {
        long thru = connection.thru().filter(way -> way.input().input().earthed()).isPresent() ? 1 : 0;
        return thru + line.boxes().stream().filter(each -> each.box().earthed()).count() + (line.input().input().earthed() ? 1 : 0);
    }

    private long mainsPlugs() {
        return earths() + line.boxes().stream().filter(each -> each.powered() == Power.MAINS && !each.box().earthed()).count();
    }
}
