package evenwood.eq;

import evenwood.measure.BiquadCoefficients;
import java.util.ArrayList;
import java.util.List;

/**
 * Several equaliser stages and a plain gain, one after the other.
 *
 * @param gainDb  of the whole chain
 * @param filters in the order sound passes them
 */
public record EqChain(double gainDb, List<EqFilter> filters) {
    public static final EqChain FLAT = new EqChain(0, List.of());

    public EqChain {
        filters = List.copyOf(filters);
    }

    public static EqChain of(EqFilter... filters) {
        return new EqChain(0, List.of(filters));
    }

    public EqChain withGainDb(double newGainDb) {
        return new EqChain(newGainDb, filters);
    }

    public EqChain then(EqFilter filter) {
        List<EqFilter> longer = new ArrayList<>(filters);
        longer.add(filter);
        return new EqChain(gainDb, longer);
    }

    /** Both, one after the other. */
    public EqChain then(EqChain other) {
        List<EqFilter> longer = new ArrayList<>(filters);
        longer.addAll(other.filters);
        return new EqChain(gainDb + other.gainDb, longer);
    }

    public double responseDb(double atHz, double sampleRateHz) {
        double sum = gainDb;
        for (EqFilter filter : filters) {
            sum += filter.responseDb(atHz, sampleRateHz);
        }
        return sum;
    }

    List<BiquadCoefficients> sections(double sampleRateHz) {
        return filters.stream().flatMap(filter -> filter.sections(sampleRateHz).stream()).toList();
    }
}
