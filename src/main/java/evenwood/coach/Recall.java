package evenwood.coach;

import evenwood.eq.BandResponse;
import evenwood.eq.ControlLaws;
import evenwood.eq.RigInUse;
import evenwood.eq.Solution;
import evenwood.eq.Solver;
import evenwood.eq.Turn;
import evenwood.measure.ThirdOctave;
import evenwood.measure.ToneDifference;
import evenwood.rig.Control;
import evenwood.rig.Rig;
import evenwood.rig.Setting;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * How to set a rig as it stood when a take was kept.
 *
 * <p>How: on the same controls each goes back to its kept position. Other controls are set by the sound, not by the
 * numbers: the {@link Solver} brings the curve of the present settings to that of the kept ones; gains are left to the next
 * check, because how much a gain must give depends on the input behind it.
 * <p>Limits: a translated setting rests on what the controls do by their presets or as learned; room, amp and speaker are not in it.
 * That is what {@code check --like} is for afterwards.
 *
 * @param steps      in the order sound passes the controls
 * @param translated whether the present rig has other controls
 * @param leftDb     of a translation, what the controls cannot make alike, RMS over the bands that count; 0 otherwise
 */
public record Recall(List<Step> steps, boolean translated, double leftDb) {
    /**
     * One control.
     *
     * @param control its name
     * @param from    where it stands, when that is known
     * @param to      where it must stand; empty for a gain that the next check will tell
     */
    public record Step(String control, Optional<String> from, Optional<String> to) {
        public boolean isThere() {
            return to.isPresent() && from.equals(to);
        }
    }

    private static final double SAMPLE_RATE_HZ = 48_000;
    private static final double TOLERANCE_DB = 0.5;
    private static final double LEAST_OF_LOWEST_NOTE = 0.9;

    public Recall {
        steps = List.copyOf(steps);
    }

    /** When nobody knows how the controls stand now. */
    public static Recall of(Rig kept) {
        return new Recall(kept.settings().stream().map(setting -> new Step(setting.control().name(), Optional.empty(), Optional.of(setting.say()))).toList(), false, 0);
    }

    public static Recall of(Rig kept, RigInUse present) {
        boolean same = kept.settings().size() == present.rig().settings().size()
            && kept.settings().stream().allMatch(setting -> isThere(setting.control(), present.rig()));
        return same ? positions(kept, present.rig()) : translation(kept, present);
    }

    /** Marked alike and doing alike: then the numbers can be taken over. */
    private static boolean isThere(Control control, Rig rig) {
        return rig.setting(control.name()).filter(setting -> setting.control().equals(control)).isPresent();
    }

    private static Recall positions(Rig kept, Rig present) {
        return new Recall(kept.settings().stream().map(setting -> new Step(setting.control().name(),
            present.setting(setting.control().name()).map(Setting::say), Optional.of(setting.say()))).toList(), false, 0);
    }

    private static Recall translation(Rig kept, RigInUse present) {
        Solution solution = new Solver(SAMPLE_RATE_HZ).solve(difference(kept, present), present.rig().settings(), present.laws(), Solver.MOST_TURNS);
        List<Step> steps = new ArrayList<>();
        for (Setting now : present.rig().settings()) {
            Setting wanted = solution.turns().stream().filter(turn -> turn.from().filter(from -> from.control().equals(now.control())).isPresent())
                .map(Turn::to).flatMap(Optional::stream).findFirst().orElse(now);
            steps.add(new Step(now.control().name(), Optional.of(now.say()), now.control().shapesTone() ? Optional.of(wanted.say()) : Optional.empty()));
        }
        return new Recall(steps, true, solution.lossAfterDb());
    }

    /** Present − kept, in the bands the instrument plays in. */
    static ToneDifference difference(Rig kept, RigInUse present) {
        BandResponse response = new BandResponse(ThirdOctave.FROM_50_HZ_TO_16_KHZ, SAMPLE_RATE_HZ);
        double[] now = curve(present, response);
        double[] then = curve(new RigInUse(kept, lawsOfKept(kept, present), OptionalDouble.empty()), response);
        List<ToneDifference.Band> bands = new ArrayList<>();
        for (int i = 0; i < now.length; i++) {
            ThirdOctave band = response.bands().get(i);
            boolean counts = band.centreHz() >= LEAST_OF_LOWEST_NOTE * kept.instrument().lowestHz();
            bands.add(new ToneDifference.Band(band, now[i] - then[i], 0, TOLERANCE_DB, counts ? 1 : 0));
        }
        return new ToneDifference(bands);
    }

    /** A control that is still there does what it does now; otherwise a learned one would seem turned where it stands as it stood. */
    private static ControlLaws lawsOfKept(Rig kept, RigInUse present) {
        return new ControlLaws(kept.settings().stream().map(Setting::control).filter(control -> isThere(control, present.rig()))
            .collect(Collectors.toMap(Control::name, present.laws()::of)));
    }

    private static double[] curve(RigInUse rig, BandResponse response) {
        double[] sum = new double[response.bands().size()];
        for (Setting setting : rig.rig().settings()) {
            if (setting.control().shapesTone()) {
                double[] own = rig.laws().of(setting.control()).bandsDb(setting, response);
                for (int i = 0; i < sum.length; i++) {
                    sum[i] += own[i];
                }
            }
        }
        return sum;
    }
}
