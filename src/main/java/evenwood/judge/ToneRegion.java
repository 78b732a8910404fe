package evenwood.judge;

import java.util.List;

/**
 * The words players use for a tone, and where on the frequency axis they put them.
 *
 * <p>Source: published lists disagree by an octave; working ranges of the project's reference §9.4 (common practice):
 * boomy 80–200 Hz, thin lack in 100–250 Hz, boxy 300–700 Hz, nasal 600 Hz–1.5 kHz, harsh 2–5 kHz, dull lack above
 * 3–5 kHz. Those lists were written for guitars: on an instrument whose lowest note lies higher, boomy and thin move up
 * with it (our choice), because where it has no notes nothing can boom or be missed.
 */
public enum ToneRegion {
    BOOMY(Fault.BOOMY, true, 80, 200), BOXY(Fault.BOXY, true, 300, 700), NASAL(Fault.NASAL, true, 600, 1500),
    HARSH(Fault.HARSH, true, 2000, 5000), THIN(Fault.THIN, false, 100, 250), DULL(Fault.DULL, false, 3000, 8000);

    /** Middle of 80 to 200 Hz, as a trade would round it. */
    private static final double GUITAR_BASS_HZ = 125;
    /** From the lowest note to the middle of the bass region: a guitar's low E to 125 Hz is 1.5; 1.25 leaves guitars as they are. */
    private static final double OVER_LOWEST_NOTE = 1.25;
    private static final double SLOPE_ONE = Math.sqrt(0.5);

    private final Fault fault;
    private final boolean excess;
    private final double lowHz;
    private final double highHz;

    ToneRegion(Fault fault, boolean excess, double lowHz, double highHz) {
        this.fault = fault;
        this.excess = excess;
        this.lowHz = lowHz;
        this.highHz = highHz;
    }

    public Fault fault() {
        return fault;
    }

    /** Too much there; otherwise too little. */
    public boolean isExcess() {
        return excess;
    }

    /** Where it lies for an instrument. */
    public BandHz bandHz(double lowestNoteHz) {
        double up = this == BOOMY || this == THIN ? bassHz(lowestNoteHz) / GUITAR_BASS_HZ : 1;
        return new BandHz(lowHz * up, highHz * up);
    }

    /** The simplest things that would make it so: narrow and wide, low and high in the region. */
    List<ToneShape> shapes(double lowestNoteHz) {
        double bass = bassHz(lowestNoteHz);
        return switch (this) {
            case BOOMY -> List.of(bell(0.8 * bass, 1.2), bell(bass, 1), bell(1.25 * bass, 1), lowShelf(1.4 * bass));
            case BOXY -> List.of(bell(380, 1), bell(450, 1), bell(550, 1));
            case NASAL -> List.of(bell(850, 1), bell(1000, 1), bell(1250, 1));
            case HARSH -> List.of(bell(2700, 0.9), bell(3300, 0.9), bell(4000, 0.9), highShelf(2500));
            case THIN -> List.of(lowShelf(1.6 * bass), lowShelf(2 * bass), lowShelf(2.6 * bass));
            case DULL -> List.of(highShelf(2500), highShelf(3500), highShelf(5000));
        };
    }

    /** Whether a shape that another word stands for lies in this word's place too. */
    boolean mayCall(ToneRegion other, ToneShape shape, double lowestNoteHz) {
        BandHz place = bandHz(lowestNoteHz);
        return excess && other.excess && shape.kind() == ToneShape.Kind.BELL && shape.centreHz() >= place.lowHz() && shape.centreHz() <= place.highHz();
    }

    private static double bassHz(double lowestNoteHz) {
        return Math.max(GUITAR_BASS_HZ, OVER_LOWEST_NOTE * lowestNoteHz);
    }

    private static ToneShape bell(double centreHz, double q) {
        return new ToneShape(ToneShape.Kind.BELL, centreHz, q);
    }

    private static ToneShape lowShelf(double centreHz) {
        return new ToneShape(ToneShape.Kind.LOW_SHELF, centreHz, SLOPE_ONE);
    }

    private static ToneShape highShelf(double centreHz) {
        return new ToneShape(ToneShape.Kind.HIGH_SHELF, centreHz, SLOPE_ONE);
    }
}
