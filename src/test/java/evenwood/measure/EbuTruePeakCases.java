package evenwood.measure;

import evenwood.ReferenceTable;
import evenwood.ReferenceTable.Row;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The true-peak signals of EBU Tech 3341 Table 1 (15–23), heard by our meter. */
final class EbuTruePeakCases {
    private static final Map<Integer, List<StandardCase>> HEARD = new ConcurrentHashMap<>();
    private static final Pattern STEADY = Pattern.compile("amplitude ([0-9.]+) of full scale; phase ([0-9.]+) deg.*");
    private static final double STEADY_SECONDS = 0.2;
    private static final double FADE_SECONDS = 0.010;
    private static final double SPLICED_SECONDS = 0.05;

    private EbuTruePeakCases() { }

    static List<StandardCase> at(int sampleRateHz) {
        return HEARD.computeIfAbsent(sampleRateHz, EbuTruePeakCases::hearAll);
    }

    /** The signal of a case, 15 to 23. */
    static float[] signal(int number, int sampleRateHz) {
        return signal(rows().get(number - 15), sampleRateHz);
    }

    static List<Row> rows() {
        return ReferenceTable.read("ebu-3341-cases.csv").stream().filter(row -> row.text("unit").equals("dBTP")).toList();
    }

    private static List<StandardCase> hearAll(int sampleRateHz) {
        List<StandardCase> cases = new ArrayList<>();
        for (Row row : rows()) {
            TruePeakMeter meter = new TruePeakMeter(new HopGrid(sampleRateHz), 100);
            Blocks.feed(signal(row, sampleRateHz), meter::accept);
            cases.add(new StandardCase(String.format(Locale.ROOT, "%s case %s", row.text("document"), row.text("case")),
                row.text("measure"), row.text("unit"), row.number("expected"), row.number("tol_plus"), row.number("tol_minus"),
                meter.reading().truePeakDbtp()));
        }
        return List.copyOf(cases);
    }

    private static float[] signal(Row row, int sampleRateHz) {
        Matcher steady = STEADY.matcher(row.text("segments"));
        if (steady.matches()) {
            double perPeriod = Double.parseDouble(row.text("frequency").substring("fs/".length()));
            return steady(perPeriod, Double.parseDouble(steady.group(1)), Double.parseDouble(steady.group(2)), sampleRateHz);
        }
        return spliced(Integer.parseInt(row.text("segments").substring(row.text("segments").length() - 1)), sampleRateHz);
    }

    private static float[] steady(double framesPerPeriod, double amplitude, double phaseDegrees, int sampleRateHz) {
        double[] sine = new double[(int) (STEADY_SECONDS * sampleRateHz)];
        for (int i = 0; i < sine.length; i++) {
            sine[i] = amplitude * Math.sin(2 * Math.PI * i / framesPerPeriod + Math.toRadians(phaseDegrees));
        }
        fadeEnds(sine, (int) (FADE_SECONDS * sampleRateHz));
        return everyNth(sine, 1, 0);
    }

    /** Made at four times the rate: half-scale sine of 24 frames a period, one full-scale period of 16 spliced in. */
    private static float[] spliced(int offset, int sampleRateHz) {
        int slow = 24;
        int fast = 16;
        int splice = (int) Math.ceil(SPLICED_SECONDS * 4 * sampleRateHz / slow) * slow;
        double[] sine = new double[2 * splice + fast];
        for (int i = 0; i < sine.length; i++) {
            sine[i] = i >= splice && i < splice + fast
                ? Math.sin(2 * Math.PI * (i - splice) / fast)
                : 0.5 * Math.sin(2 * Math.PI * (i < splice ? i : i - splice - fast) / slow);
        }
        fadeEnds(sine, (int) (FADE_SECONDS * 4 * sampleRateHz));
        return everyNth(KaiserLowPass.filtered(sine, 0.45 / 4), 4, offset);
    }

    private static void fadeEnds(double[] signal, int frames) {
        for (int i = 0; i < frames; i++) {
            double gain = 0.5 - 0.5 * Math.cos(Math.PI * i / frames);
            signal[i] *= gain;
            signal[signal.length - 1 - i] *= gain;
        }
    }

    private static float[] everyNth(double[] signal, int n, int offset) {
        float[] kept = new float[(signal.length - offset + n - 1) / n];
        for (int i = 0; i < kept.length; i++) {
            kept[i] = (float) signal[offset + i * n];
        }
        return kept;
    }
}
