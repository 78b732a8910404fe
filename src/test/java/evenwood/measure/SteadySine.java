package evenwood.measure;

import java.util.ArrayList;
import java.util.List;

/** A 1000 Hz sine in stretches of given length and level, as the EBU documents write their signals: "10@-36;3@silence". */
final class SteadySine {
    private static final int FREQUENCY_HZ = 1000;

    private final double[] period;
    private final int sampleRateHz;

    SteadySine(int sampleRateHz) {
        this.sampleRateHz = sampleRateHz;
        int common = java.math.BigInteger.valueOf(sampleRateHz).gcd(java.math.BigInteger.valueOf(FREQUENCY_HZ)).intValue();
        period = new double[sampleRateHz / common];
        for (int i = 0; i < period.length; i++) {
            period[i] = Math.sin(2 * Math.PI * ((double) i * FREQUENCY_HZ / sampleRateHz));
        }
    }

    float[] segments(String segments) {
        List<float[]> parts = new ArrayList<>();
        double endSeconds = 0;
        int start = 0;
        for (String segment : segments.split(";")) {
            String[] lengthAndLevel = segment.split("@");
            endSeconds += Double.parseDouble(lengthAndLevel[0]);
            int end = (int) Math.round(endSeconds * sampleRateHz);
            parts.add(stretch(start, end, lengthAndLevel[1]));
            start = end;
        }
        return Blocks.joined(parts.toArray(float[][]::new));
    }

    private float[] stretch(int start, int end, String levelDbfs) {
        double amplitude = levelDbfs.equals("silence") ? 0 : Math.pow(10, Double.parseDouble(levelDbfs) / 20);
        float[] part = new float[end - start];
        for (int i = 0; i < part.length; i++) {
            part[i] = (float) (amplitude * period[(start + i) % period.length]);
        }
        return part;
    }
}
