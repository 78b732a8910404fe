package evenwood.measure;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.regex.Pattern;

/**
 * What ffmpeg's filters {@code ebur128} and {@code astats} read from a mono file.
 *
 * @param truePeakDbtp  from the amplitude that {@code ebur128} gives to three decimals
 * @param momentaryLufs after every 100 ms; about −120 before the window is full, not a number in silence, which counts as −Infinity here
 * @param shortTermLufs after every 100 ms; about −120 before the window is full
 */
record FfmpegLevels(double integratedLufs, double rangeLu, double truePeakDbtp, double samplePeakDbfs, double rmsDbfs,
                    double dcOffset, double[] momentaryLufs, double[] shortTermLufs) {

    static FfmpegLevels of(Path file) {
        try {
            Path perHop = Files.createTempFile("ffmpeg-levels", ".txt");
            String whole = run("ffmpeg", "-hide_banner", "-nostats", "-i", file.toString(), "-af",
                "astats=measure_overall=none:measure_perchannel=DC_offset+Peak_level+RMS_level,ebur128=peak=true:metadata=1,"
                    + "ametadata=mode=print:file=" + perHop, "-f", "null", "-");
            String hops = Files.readString(perHop);
            Files.delete(perHop);
            return new FfmpegLevels(last(hops, "r128\\.I="), last(hops, "r128\\.LRA="), 20 * Math.log10(last(hops, "r128\\.true_peak=")),
                last(whole, "Peak level dB: "), last(whole, "RMS level dB: "), last(whole, "DC offset: "),
                all(hops, "r128\\.M="), all(hops, "r128\\.S="));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * The loudness range by the words of EBU Tech 3342, from ffmpeg's own short-term values. Its own figure takes rank
     * round(n·p/100) where the document says round((n − 1)·p/100 + 1), seen by recomputing it from those values.
     */
    double rangeByTheDocumentLu() {
        double[] above = Arrays.stream(shortTermLufs).filter(lufs -> lufs >= -70).toArray();
        double gate = 10 * Math.log10(Arrays.stream(above).map(lufs -> Math.pow(10, lufs / 10)).average().orElseThrow()) - 20;
        double[] ascending = Arrays.stream(above).filter(lufs -> lufs >= gate).sorted().toArray();
        return ranked(ascending, 95) - ranked(ascending, 10);
    }

    private static double ranked(double[] ascending, double percent) {
        return ascending[(int) Math.round((ascending.length - 1) * percent / 100 + 1) - 1];
    }

    private static double last(String text, String label) {
        double[] all = all(text, label);
        return all[all.length - 1];
    }

    private static double[] all(String text, String label) {
        double[] all = Pattern.compile(label + "(-?[0-9.]+|-?nan|-inf)").matcher(text).results()
            .mapToDouble(found -> found.group(1).matches("-?[0-9.]+") ? Double.parseDouble(found.group(1)) : Double.NEGATIVE_INFINITY).toArray();
        if (all.length == 0) {
            throw new IllegalStateException("read levels with ffmpeg: no " + label + " in what it said: " + text);
        }
        return all;
    }

    private static String run(String... command) throws IOException {
        try {
            Process process = new ProcessBuilder(command).redirectErrorStream(true).redirectInput(ProcessBuilder.Redirect.from(new java.io.File("/dev/null"))).start();
            String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            if (process.waitFor() != 0) {
                throw new IllegalStateException("read levels with ffmpeg: exit " + process.exitValue() + ": " + said);
            }
            return said;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("read levels with ffmpeg: interrupted", e);
        }
    }
}
