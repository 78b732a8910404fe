package evenwood.coach;

/**
 * The highest point of a take after some change, and how sure that is.
 *
 * @param truePeakDbtp  predicted true peak
 * @param uncertaintyDb 95 % half-width; nearly 0 when the take itself went through the change
 */
public record PeakAfter(double truePeakDbtp, double uncertaintyDb) {
    PeakAfter plus(double gainDb) {
        return new PeakAfter(truePeakDbtp + gainDb, uncertaintyDb);
    }
}
