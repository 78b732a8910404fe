package evenwood.eq;

import evenwood.measure.BiquadCoefficients;
import java.util.ArrayList;
import java.util.List;

/**
 * The formulas of the audio EQ cookbook (W3C Working Group Note, 8 June 2021), in double precision.
 *
 * <p>Butterworth cascades: a filter of order n has section Qs 1/(2·cos θ), θ = π/(2n)·(1, 3, 5 …) for even and the same
 * with a first-order section for odd n. Source: any filter handbook; checked against scipy's {@code butter}.
 */
final class CookbookSections {
    private CookbookSections() { }

    static List<BiquadCoefficients> of(EqFilter filter, double sampleRateHz) {
        boolean pass = filter.kind() == FilterKind.HIGH_PASS || filter.kind() == FilterKind.LOW_PASS;
        return pass && filter.order() != 2 ? butterworth(filter, sampleRateHz) : List.of(section(filter, sampleRateHz, filter.q()));
    }

    private static List<BiquadCoefficients> butterworth(EqFilter filter, double sampleRateHz) {
        int order = filter.order();
        List<BiquadCoefficients> sections = new ArrayList<>();
        for (int i = 0; i < order / 2; i++) {
            double theta = Math.PI * (order % 2 == 0 ? 2 * i + 1 : 2 * i + 2) / (2 * order);
            sections.add(section(filter, sampleRateHz, 1 / (2 * Math.cos(theta))));
        }
        if (order % 2 == 1) {
            sections.add(firstOrder(filter, sampleRateHz));
        }
        return sections;
    }

    private static BiquadCoefficients firstOrder(EqFilter filter, double sampleRateHz) {
        double k = Math.tan(Math.PI * filter.frequencyHz() / sampleRateHz);
        double a1 = (k - 1) / (k + 1);
        return filter.kind() == FilterKind.HIGH_PASS
            ? new BiquadCoefficients(1 / (1 + k), -1 / (1 + k), 0, a1, 0)
            : new BiquadCoefficients(k / (1 + k), k / (1 + k), 0, a1, 0);
    }

    private static BiquadCoefficients section(EqFilter filter, double sampleRateHz, double q) {
        double w = 2 * Math.PI * filter.frequencyHz() / sampleRateHz;
        double c = Math.cos(w);
        double alpha = Math.sin(w) / (2 * q);
        double a = Math.pow(10, filter.gainDb() / 40);
        return switch (filter.kind()) {
            case PEAK -> over(1 + alpha * a, -2 * c, 1 - alpha * a, 1 + alpha / a, -2 * c, 1 - alpha / a);
            case NOTCH -> over(1, -2 * c, 1, 1 + alpha, -2 * c, 1 - alpha);
            case HIGH_PASS -> over((1 + c) / 2, -(1 + c), (1 + c) / 2, 1 + alpha, -2 * c, 1 - alpha);
            case LOW_PASS -> over((1 - c) / 2, 1 - c, (1 - c) / 2, 1 + alpha, -2 * c, 1 - alpha);
            case LOW_SHELF -> lowShelf(a, c, 2 * Math.sqrt(a) * alpha);
            case HIGH_SHELF -> highShelf(a, c, 2 * Math.sqrt(a) * alpha);
        };
    }

    private static BiquadCoefficients lowShelf(double a, double c, double s) {
        return over(a * ((a + 1) - (a - 1) * c + s), 2 * a * ((a - 1) - (a + 1) * c), a * ((a + 1) - (a - 1) * c - s),
            (a + 1) + (a - 1) * c + s, -2 * ((a - 1) + (a + 1) * c), (a + 1) + (a - 1) * c - s);
    }

    private static BiquadCoefficients highShelf(double a, double c, double s) {
        return over(a * ((a + 1) + (a - 1) * c + s), -2 * a * ((a - 1) + (a + 1) * c), a * ((a + 1) + (a - 1) * c - s),
            (a + 1) - (a - 1) * c + s, 2 * ((a - 1) - (a + 1) * c), (a + 1) - (a - 1) * c - s);
    }

    private static BiquadCoefficients over(double b0, double b1, double b2, double a0, double a1, double a2) {
        return new BiquadCoefficients(b0 / a0, b1 / a0, b2 / a0, a1 / a0, a2 / a0);
    }
}
