package evenwood.measure;

import evenwood.ReferenceTable;
import evenwood.ReferenceTable.Row;
import evenwood.sound.AudioBlock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/** The loudness signals of EBU Tech 3341 Table 1 (1–6, 9–14) and Tech 3342 Table 1 (1–4), heard by our meter. */
final class EbuLoudnessCases {
    private static final Map<Integer, List<StandardCase>> HEARD = new ConcurrentHashMap<>();
    private static final int FIRST_TRUE_PEAK_CASE = 15;
    private static final int READINGS_PER_SECOND = 100;

    private final int sampleRateHz;
    private final SteadySine sine;
    private final List<StandardCase> cases = new ArrayList<>();

    private EbuLoudnessCases(int sampleRateHz) {
        this.sampleRateHz = sampleRateHz;
        sine = new SteadySine(sampleRateHz);
    }

    static List<StandardCase> at(int sampleRateHz) {
        return HEARD.computeIfAbsent(sampleRateHz, rate -> new EbuLoudnessCases(rate).hearAll());
    }

    private List<StandardCase> hearAll() {
        Map<Integer, List<Row>> byCase = ReferenceTable.read("ebu-3341-cases.csv").stream()
            .filter(row -> row.text("synthesisable").equals("yes") && row.integer("case") < FIRST_TRUE_PEAK_CASE)
            .collect(Collectors.groupingBy(row -> row.integer("case"), java.util.TreeMap::new, Collectors.toList()));
        byCase.values().forEach(this::hearCase);
        ReferenceTable.read("ebu-3342-cases.csv").stream().filter(row -> row.text("synthesisable").equals("yes")).forEach(this::hearRange);
        return List.copyOf(cases);
    }

    private void hearCase(List<Row> rows) {
        switch (rows.get(0).integer("case")) {
            case 6 -> hearSurround(rows.get(0));
            case 9 -> hearConstant(rows.get(0), 3);
            case 12 -> hearConstant(rows.get(0), 1);
            case 11, 14 -> hearStairs(rows);
            default -> rows.forEach(this::hearFile);
        }
    }

    private void hearFile(Row row) {
        LoudnessMeter meter = new LoudnessMeter(sampleRateHz, 2);
        hear(meter, sine.segments(row.text("segments")), reading -> { });
        add(row, row.text("measure"), measured(row.text("measure"), meter.reading()));
    }

    private static double measured(String measure, LoudnessReading reading) {
        return switch (measure) {
            case "M" -> reading.momentaryLufs();
            case "S" -> reading.shortTermLufs();
            case "I" -> reading.integratedLufs();
            case "max M" -> reading.maxMomentaryLufs();
            case "max S" -> reading.maxShortTermLufs();
            default -> throw new IllegalArgumentException("EBU case: measure=" + measure);
        };
    }

    /** 5.0 channels, written as "20@L-28 R-28 C-24 Ls-30 Rs-30", which is the order of our five. */
    private void hearSurround(Row row) {
        String[] levels = row.text("segments").replaceAll("[LRCs]", "").split("@")[1].split(" ");
        AudioBlock[] channels = Arrays.stream(levels).map(level -> AudioBlock.of(0, sine.segments("20@" + level))).toArray(AudioBlock[]::new);
        LoudnessMeter meter = new LoudnessMeter(sampleRateHz, channels.length);
        meter.accept(channels);
        add(row, "I", meter.reading().integratedLufs());
    }

    private void hearConstant(Row row, double afterSeconds) {
        List<Double> values = new ArrayList<>();
        LoudnessMeter meter = new LoudnessMeter(sampleRateHz, 2);
        hear(meter, sine.segments(row.text("segments")), reading -> values.add(measured(row.text("measure"), reading)));
        int settledReading = (int) Math.ceil(afterSeconds * sampleRateHz / blockFrames()) - 1;
        List<Double> settled = values.subList(settledReading, values.size());
        add(row, "lowest " + row.text("measure"), settled.stream().mapToDouble(x -> x).min().orElseThrow());
        add(row, "highest " + row.text("measure"), settled.stream().mapToDouble(x -> x).max().orElseThrow());
    }

    /** One signal made of all rows; in each row's stretch the highest value counts. */
    private void hearStairs(List<Row> rows) {
        LoudnessMeter meter = new LoudnessMeter(sampleRateHz, 2);
        boolean momentary = rows.get(0).text("measure").contains("M");
        for (Row row : rows) {
            double[] highest = {Double.NEGATIVE_INFINITY};
            hear(meter, sine.segments(row.text("segments")), reading ->
                highest[0] = Math.max(highest[0], momentary ? reading.momentaryLufs() : reading.shortTermLufs()));
            add(row, "max " + (momentary ? "M" : "S"), highest[0]);
        }
    }

    private void hearRange(Row row) {
        float[] signal = sine.segments(row.text("segments"));
        LoudnessMeter meter = new LoudnessMeter(sampleRateHz, 2);
        hear(meter, signal, reading -> { });
        add(row, "LRA", meter.reading().rangeLu());
        add(row, "LRA of the finished take", meter.readingOfFinishedTake().rangeLu());
        hear(meter, signal, reading -> { });
        add(row, "LRA, signal twice", meter.reading().rangeLu());
    }

    private int blockFrames() {
        return sampleRateHz / READINGS_PER_SECOND;
    }

    /** The same on both channels, in blocks of 10 ms, with a reading after each. */
    private void hear(LoudnessMeter meter, float[] signal, Consumer<LoudnessReading> after) {
        AudioBlock[] channels = new AudioBlock[2];
        Blocks.feed(signal, blockFrames(), block -> {
            Arrays.fill(channels, block);
            meter.accept(channels);
            after.accept(meter.reading());
        });
    }

    private void add(Row row, String what, double ours) {
        String index = row.text("sub_index").isEmpty() ? "" : " signal " + row.text("sub_index");
        cases.add(new StandardCase(row.text("document") + " case " + row.text("case"), what + index, row.text("unit"),
            row.number("expected"), row.number("tol_plus"), row.number("tol_minus"), ours));
    }
}
