package evenwood.measure;

import evenwood.sound.AudioBlock;
import java.util.List;
import java.util.function.Consumer;

/** Plays an array to a meter, block by block. */
final class HeardInBlocks {
    private HeardInBlocks() { }

    static void play(float[] samples, int blockFrames, Consumer<AudioBlock> meter) {
        AudioBlock block = new AudioBlock(blockFrames);
        for (int at = 0; at < samples.length; at += blockFrames) {
            int frames = Math.min(blockFrames, samples.length - at);
            System.arraycopy(samples, at, block.samples(), 0, frames);
            block.set(at, frames);
            meter.accept(block);
        }
    }

    static ClickReading clicks(float[] samples, int sampleRateHz) {
        ClickMeter meter = new ClickMeter(sampleRateHz);
        play(samples, AudioBlock.DEFAULT_FRAMES, meter::accept);
        return meter.reading();
    }

    static List<Dropout> dropouts(float[] samples, int sampleRateHz) {
        DropoutMeter meter = new DropoutMeter(sampleRateHz);
        play(samples, AudioBlock.DEFAULT_FRAMES, meter::accept);
        return meter.places();
    }
}
