package evenwood.measure;

import java.util.List;

/** What the meters of interruptions say of an array. */
final class HeardInBlocks {
    private HeardInBlocks() { }

    static ClickReading clicks(float[] samples, int sampleRateHz) {
        ClickMeter meter = new ClickMeter(sampleRateHz);
        Blocks.feed(samples, meter::accept);
        return meter.reading();
    }

    static List<Dropout> dropouts(float[] samples, int sampleRateHz) {
        DropoutMeter meter = new DropoutMeter(sampleRateHz);
        Blocks.feed(samples, meter::accept);
        return meter.places();
    }
}
