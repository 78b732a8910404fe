package evenwood.eq;

import evenwood.measure.ToneDifference;
import evenwood.rig.Setting;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Finds the fewest and smallest turns that bring a tone where it should be.
 *
 * <p>In: a {@link ToneDifference}; the settings of a rig, or nothing for a plain parametric equaliser. Out: {@link Solution}.
 * <p>How: a beam search adds one knob at a time, each at the best of its coarse places, moves all dials together
 * ({@link Refinement}) and keeps the few best. Of the answers with one, two, three turns the shortest is taken that leaves at
 * most {@value #WORTH_ANOTHER_DB} dB more than the best; then a turn under {@value #SMALLEST_TURN_DB} dB or its standard error is taken
 * back (a boost under 1.6 standard errors, a turn that would do harm alone under two), and all are unless one is at least twice its
 * standard error (reference §12.3; after one sure turn the likeliest is the best). Same input, same answer: nothing is drawn by lot.
 * <p>Limits: three knobs of an amp are within 0.5 dB RMS of trying every position (SolverExhaustiveTest).
 */
public final class Solver {
    public static final int MOST_TURNS = 3;
    static final double SMALLEST_TURN_DB = 1.5;
    private static final double STANDARD_ERRORS = 1;
    /** One chance in twenty of boosting what needs no boost (normal distribution, one side). */
    private static final double BOOST_STANDARD_ERRORS = 1.645;
    private static final double SURE_STANDARD_ERRORS = 2;
    private static final double WORTH_ANOTHER_DB = 0.1;
    private static final int BEAM = 4;
    private static final int TRIED_PER_KNOB = 3;
    private static final int TRIED = 6;
    private static final int LOOKED_AT = 150;
    private static final double UNLIKE_OCTAVES = 0.5;

    private final double sampleRateHz;

    /** @param sampleRateHz of the take that is to be changed, so that what is predicted is what is rendered */
    public Solver(double sampleRateHz) {
        this.sampleRateHz = sampleRateHz;
    }

    /** For a plain parametric equaliser that stands flat. */
    public Solution solve(ToneDifference heard, int mostTurns) {
        BandsBeyond bands = new BandsBeyond(heard);
        return solve(heard, bands, FreeStage.equaliser(mostTurns, response(bands.whole())), mostTurns);
    }

    /** For the tone controls of a rig as they stand. */
    public Solution solve(ToneDifference heard, List<Setting> settings, ControlLaws laws, int mostTurns) {
        BandsBeyond bands = new BandsBeyond(heard);
        BandResponse response = response(bands.whole());
        List<Knob> knobs = new ArrayList<>();
        settings.forEach(setting -> knobs.addAll(RigKnob.of(setting, laws.of(setting.control()), response)));
        return solve(heard, bands, knobs, mostTurns);
    }

    private BandResponse response(ToneDifference heard) {
        return new BandResponse(heard.bands().stream().map(ToneDifference.Band::band).toList(), sampleRateHz);
    }

    private static Solution solve(ToneDifference heard, BandsBeyond bands, List<Knob> knobs, int mostTurns) {
        ToneLoss loss = new ToneLoss(bands.whole());
        Combination best = needsNothing(loss) ? Combination.NOTHING_TURNED : search(loss, knobs, mostTurns);
        return solution(heard, bands, loss, withoutDoubtful(best, loss));
    }

    private static boolean needsNothing(ToneLoss loss) {
        double[] left = loss.left(new double[loss.bands()]);
        for (int i = 0; i < left.length; i++) {
            if (loss.weight(i) > 0 && loss.isOutside(i, left[i])) {
                return false;
            }
        }
        return true;
    }

    private static Combination search(ToneLoss loss, List<Knob> knobs, int mostTurns) {
        List<Combination> bestOfSize = new ArrayList<>(List.of(Combination.NOTHING_TURNED));
        List<Combination> beam = bestOfSize;
        for (int size = 1; size <= mostTurns; size++) {
            List<Combination> longer = new ArrayList<>();
            for (Combination each : beam) {
                longer.addAll(extended(each, loss, knobs));
            }
            if (longer.isEmpty()) {
                break;
            }
            longer.sort(Comparator.comparingDouble(each -> each.cost(loss)));
            beam = longer.subList(0, Math.min(BEAM, longer.size()));
            bestOfSize.add(beam.get(0));
        }
        return fewest(bestOfSize, loss);
    }

    private static Combination fewest(List<Combination> bestOfSize, ToneLoss loss) {
        double least = bestOfSize.stream().mapToDouble(each -> loss.db(each.effectDb(loss.bands()))).min().orElse(0);
        return bestOfSize.stream().filter(each -> loss.db(each.effectDb(loss.bands())) <= least + WORTH_ANOTHER_DB).findFirst().orElseThrow();
    }

    /** The combination with one more knob, in several ways, each brought to its best settable places. */
    private static List<Combination> extended(Combination start, ToneLoss loss, List<Knob> knobs) {
        List<Combination> coarse = new ArrayList<>();
        for (Knob knob : knobs) {
            if (!start.turns(knob.control()) && isFirstOfItsLikes(knob, knobs, start)) {
                coarse.addAll(bestStarts(start, loss, knob));
            }
        }
        coarse.sort(Comparator.comparingDouble(each -> each.cost(loss)));
        return coarse.stream().limit(TRIED).map(each -> Refinement.settable(Refinement.continuous(each, loss), loss)).toList();
    }

    /** Of several free peaks only the next unused one is looked at: they are all alike. */
    private static boolean isFirstOfItsLikes(Knob knob, List<Knob> knobs, Combination start) {
        if (!(knob instanceof FreeStage stage)) {
            return true;
        }
        return knobs.stream().filter(other -> other instanceof FreeStage free && free.isLike(stage) && !start.turns(other))
            .findFirst().orElseThrow() == knob;
    }

    private static List<Combination> bestStarts(Combination start, ToneLoss loss, Knob knob) {
        List<Combination> all = new ArrayList<>();
        double[] already = start.effectDb(loss.bands());
        Effort effort = start.effort(loss);
        List<double[]> places = knob.starts();
        List<double[]> effects = knob.startEffectsDb();
        double[] costs = new double[places.size()];
        for (int i = 0; i < costs.length; i++) {
            costs[i] = loss.roughSquare(already, effects.get(i));
        }
        int[] likely = smallest(costs);
        for (int i : likely) {
            costs[i] = loss.square(sum(already, effects.get(i))) + effort.plus(Effort.of(effects.get(i), loss)).cost();
        }
        List<Integer> order = Arrays.stream(likely).boxed().sorted(Comparator.comparingDouble(i -> costs[i])).toList();
        List<double[]> taken = new ArrayList<>();
        for (int i = 0; i < order.size() && taken.size() < TRIED_PER_KNOB; i++) {
            double[] place = places.get(order.get(i));
            if (taken.stream().allMatch(other -> unlike(other, place))) {
                taken.add(place);
                all.add(start.with(Combination.Placed.at(knob, place)));
            }
        }
        return all;
    }

    /** The places of the {@value #LOOKED_AT} smallest, and of what equals the last of them. */
    private static int[] smallest(double[] costs) {
        double[] sorted = costs.clone();
        Arrays.sort(sorted);
        double most = sorted[Math.min(LOOKED_AT, sorted.length) - 1];
        return IntStream.range(0, costs.length).filter(i -> costs[i] <= most).toArray();
    }

    /** Starts of one knob are worth trying beside each other when they lie well apart on some dial; a gain alone leads downhill. */
    private static boolean unlike(double[] a, double[] b) {
        for (int i = 0; i < a.length; i++) {
            if (a.length > 1 && Math.abs(a[i] - b[i]) > UNLIKE_OCTAVES) {
                return true;
            }
        }
        return false;
    }

    /** Takes back, one by one, what is too small or too unsure, and lets the others settle again. */
    private static Combination withoutDoubtful(Combination found, ToneLoss loss) {
        Combination left = found;
        while (left.size() > 0) {
            double[] errors = TurnUncertainty.standardErrorsDb(left.effects(), loss);
            int worst = -1;
            double least = 1;
            boolean sure = false;
            for (int k = 0; k < errors.length; k++) {
                double size = Effort.of(left.placed().get(k).effectDb(), loss).sizeDb();
                sure |= size >= SURE_STANDARD_ERRORS * errors[k];
                double enough = size / Math.max(SMALLEST_TURN_DB, leastStandardErrors(left.placed().get(k).effectDb(), loss) * errors[k]);
                if (enough < least) {
                    least = enough;
                    worst = k;
                }
            }
            if (worst < 0) {
                return sure ? left : Combination.NOTHING_TURNED;
            }
            left = Refinement.settable(left.without(worst), loss);
        }
        return left;
    }

    /** A boost has to be surer than a cut, and a turn that would do harm if it were the only one made surer still. */
    private static double leastStandardErrors(double[] effectDb, ToneLoss loss) {
        if (loss.db(effectDb) > loss.db(new double[effectDb.length])) {
            return SURE_STANDARD_ERRORS;
        }
        Effort effort = Effort.of(effectDb, loss);
        return effort.boostDb() > effort.cutDb() ? BOOST_STANDARD_ERRORS : STANDARD_ERRORS;
    }

    private static Solution solution(ToneDifference heard, BandsBeyond bands, ToneLoss loss, Combination found) {
        double[] nothing = new double[loss.bands()];
        double[] effect = found.effectDb(loss.bands());
        double[] errors = TurnUncertainty.standardErrorsDb(found.effects(), loss);
        List<Turn> turns = new ArrayList<>();
        for (int k = 0; k < found.size(); k++) {
            double benefit = loss.db(found.without(k).effectDb(loss.bands())) - loss.db(effect);
            Combination.Placed placed = found.placed().get(k);
            turns.add(placed.knob().turn(placed.place(), new Turn.Figures(Arrays.stream(bands.heardOf(placed.effectDb())).boxed().toList(),
                Effort.of(placed.effectDb(), loss).sizeDb(), errors[k], benefit)));
        }
        turns.sort(Comparator.comparingDouble((Turn turn) -> -turn.figures().benefitDb()));
        return new Solution(turns, withDifference(heard, bands.heardOf(loss.heardLeft(nothing))), withDifference(heard, bands.heardOf(loss.heardLeft(effect))),
            loss.db(nothing), loss.db(effect));
    }

    private static ToneDifference withDifference(ToneDifference heard, double[] differenceDb) {
        List<ToneDifference.Band> bands = new ArrayList<>();
        for (int i = 0; i < differenceDb.length; i++) {
            ToneDifference.Band band = heard.bands().get(i);
            bands.add(new ToneDifference.Band(band.band(), differenceDb[i], band.uncertaintyDb(), band.toleranceDb(), band.weight()));
        }
        return new ToneDifference(bands);
    }

    private static double[] sum(double[] a, double[] b) {
        double[] sum = a.clone();
        for (int i = 0; i < sum.length; i++) {
            sum[i] += b[i];
        }
        return sum;
    }
}
