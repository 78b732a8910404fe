package evenwood.takes;

import evenwood.coach.hunt.NoiseParts;
import evenwood.rig.HuntTable.Part;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.Collectors;

/**
 * A rig with one planted cause of noise, as physics has it; knows nothing of the table the hunt reasons by.
 *
 * <p>How: every cause is a source with the harmonic series of its waveform ({@link Mains}), a way in (flat, or tilted by 6 dB an
 * octave where an electric field meets a resistance or a magnetic one a coil) and a level. All other causes are there too, far
 * weaker, so that no cure is complete. A trial changes the ways in by decibels that follow from what it does: a body's screening,
 * the cosine of an angle, the cube of a distance, the loop that opens or closes elsewhere, the gain that comes before or behind;
 * how strongly is drawn for each rig. Powers add, sources wander between two measurements, measurements err, and one trial in
 * twenty-five is made wrongly and does nothing. Amounts are estimates of the same kind as anybody's; shapes are not.
 */
public final class NoisyRig {
    public static final List<String> CAUSES = List.of("ground-loop", "instrument-screen", "cable-screen", "charger", "box-adapter", "magnetic-field",
        "dimmer", "mobile", "instrument-preamp", "weak-signal", "input-noise", "computer-tones");
    /** What happens too and stands in no table: hum made in the mixer itself, a sound in the room that the pickup hears, a contact that comes and goes. */
    public static final List<String> UNLISTED = List.of("mixer-supply", "room-sound", "loose-contact");
    private static final Map<Mains.Origin, double[]> SERIES = Arrays.stream(Mains.Origin.values()).collect(Collectors.toMap(each -> each, Mains::series));
    private static final double NEVER_DB = -200;
    private static final double BOTCHED = 0.04;

    /** @param power of each part, dBFS as plain power  @param drawn facts of this source, 0 to 1 */
    private record Source(String cause, double[] power, double[] drawn) { }

    private final SplittableRandom random;
    private final List<Source> sources = new ArrayList<>();
    private final double wanderDb;
    private final double errorDb;
    private final boolean piezo;
    /** What an open cable picks up by itself where it hangs. */
    private final double openCableDb;

    public NoisyRig(String planted, long seed) {
        random = new SplittableRandom(seed);
        wanderDb = between(0.3, 1.8);
        errorDb = between(0.2, 0.8);
        piezo = random.nextDouble() < 0.6;
        openCableDb = between(-90, -50);
        for (String cause : CAUSES) {
            add(cause, cause.equals(planted) ? between(-66, -42) : between(-108, -84));
        }
        if (UNLISTED.contains(planted)) {
            add(planted, between(-66, -42));
        }
        sources.add(new Source("converter", parts(NEVER_DB, NEVER_DB, between(-100, -82), NEVER_DB), new double[6]));
    }

    private void add(String cause, double level) {
        double[] drawn = new double[6];
        Arrays.setAll(drawn, i -> random.nextDouble());
        sources.add(new Source(cause, power(cause, level), drawn));
    }

    /** Everything as it is. */
    public NoiseParts before() {
        return measured("", false);
    }

    /** With this one thing changed. */
    public NoiseParts after(String trial) {
        return measured(trial, random.nextDouble() < BOTCHED);
    }

    private NoiseParts measured(String trial, boolean botched) {
        double[] sum = new double[Part.values().length];
        for (Source source : sources) {
            double change = source.cause.equals("loose-contact") ? between(-12, 6) : trial.isEmpty() || botched ? 0 : changeDb(trial, source);
            double wander = wanderDb * random.nextGaussian();
            for (int i = 0; i < sum.length; i++) {
                sum[i] += source.power[i] * Math.pow(10, (change + (i == Part.HISS.ordinal() ? 0 : wander)) / 10);
            }
        }
        if (trial.equals("plug-out-at-instrument") && !botched) {
            double[] open = mains(openCableDb, Mains.Origin.MAGNETIC, 0.1, !piezo);
            for (int i = 0; i < sum.length; i++) {
                sum[i] += open[i];
            }
        }
        Map<Part, Double> levels = new EnumMap<>(Part.class);
        Map<Part, Double> deviations = new EnumMap<>(Part.class);
        // Lines stand out of hiss as far as the meter's second lets them; under loud lines hiss is known to a part in three thousand.
        double hiss = sum[Part.HISS.ordinal()];
        sum[Part.HISS.ordinal()] += 3e-4 * (Arrays.stream(sum).sum() - hiss);
        double least = 10 * Math.log10(sum[Part.HISS.ordinal()]) - 30;
        for (Part part : Part.values()) {
            levels.put(part, Math.max(least, 10 * Math.log10(sum[part.ordinal()]) + errorDb * random.nextGaussian()));
            deviations.put(part, errorDb * between(0.7, 1.4));
        }
        return new NoiseParts(levels, deviations);
    }

    private double[] power(String cause, double level) {
        return switch (cause) {
            case "ground-loop" -> mains(level, Mains.Origin.GROUND_LOOP, 0, false);
            case "mixer-supply" -> mains(level, Mains.Origin.RECTIFIER, 0.02, false);
            case "room-sound" -> parts(random.nextDouble() < 0.6 ? level : NEVER_DB, NEVER_DB, level + between(-12, 6), NEVER_DB);
            case "loose-contact" -> mains(level, Mains.Origin.MAGNETIC, between(0, 0.15), true);
            case "instrument-screen", "cable-screen" -> mains(level, Mains.Origin.MAGNETIC, between(0, 0.15), !piezo || cause.equals("cable-screen"));
            case "charger" -> plus(mains(level, Mains.Origin.CHARGING, 0, random.nextDouble() < 0.5), Part.TONE, random.nextDouble() < 0.6 ? level + between(-25, 0) : NEVER_DB);
            case "box-adapter" -> plus(mains(level, Mains.Origin.RECTIFIER, 0.05, false), Part.TONE, random.nextDouble() < 0.4 ? level + between(-25, -5) : NEVER_DB);
            case "magnetic-field" -> mains(level, Mains.Origin.MAGNETIC, 0, random.nextDouble() < 0.5);
            case "dimmer" -> mains(level, Mains.Origin.DIMMER, 0, random.nextDouble() < 0.7);
            case "mobile" -> parts(NEVER_DB, level - between(15, 30), NEVER_DB, level);
            case "instrument-preamp", "input-noise" -> parts(NEVER_DB, NEVER_DB, level, NEVER_DB);
            case "weak-signal" -> parts(random.nextDouble() < 0.25 ? level + between(-15, -3) : NEVER_DB, NEVER_DB, level, NEVER_DB);
            case "computer-tones" -> parts(NEVER_DB, random.nextDouble() < 0.4 ? level + between(-20, -5) : NEVER_DB, NEVER_DB, level);
            default -> throw new IllegalArgumentException(cause);
        };
    }

    /** How a trial changes what comes from this source, decibels of its amplitude. */
    private double changeDb(String trial, Source source) {
        double[] d = source.drawn;
        String cause = source.cause;
        if (cause.equals("mixer-supply")) {
            return trial.equals("other-input") && d[0] < 0.3 ? -12 * d[1] : 0;
        }
        if (cause.equals("room-sound")) {
            return switch (trial) {
                case "volume-down", "plug-out-at-instrument", "plug-out-at-input" -> -50;
                case "touch-strings" -> -4 * d[0];
                case "move-away" -> -8 * d[1];
                default -> 0;
            };
        }
        return switch (trial) {
            case "touch-strings" -> switch (cause) {
                // The body joined to earthed strings screens the pickup; joined to floating ones it brings its own voltage along.
                case "instrument-screen" -> d[0] < 0.75 ? -8 - 17 * d[1] : -6 + 16 * d[1];
                case "cable-screen" -> -8 + 20 * d[1];
                case "dimmer" -> -12 * d[1] * d[2];
                case "charger" -> d[0] < 0.6 ? -15 * d[1] : 0;
                case "mobile" -> -3 * d[1];
                default -> 0;
            };
            case "volume-down" -> switch (cause) {
                case "instrument-screen", "magnetic-field" -> left(0.3 * d[2] * d[2]);
                case "instrument-preamp" -> d[0] < 0.85 ? -40 : left(0.5 + 0.5 * d[1]);
                case "dimmer", "mobile" -> left(d[2]);
                default -> 0;
            };
            case "plug-out-at-instrument" -> switch (cause) {
                case "instrument-screen", "magnetic-field", "instrument-preamp" -> -60;
                case "dimmer", "mobile" -> left(d[2]);
                case "cable-screen" -> -3 + 12 * d[3];
                case "charger" -> d[0] < 0.25 ? -12 * d[1] : 0;
                case "weak-signal", "input-noise" -> -2 + 6 * d[4];
                default -> 0;
            };
            case "plug-out-at-input" -> switch (cause) {
                case "weak-signal" -> -3 * d[4];
                case "input-noise", "converter" -> 0;
                case "computer-tones" -> left(d[3]);
                case "mobile" -> left(d[4] * d[4]);
                default -> -50;
            };
            case "all-on-batteries" -> switch (cause) {
                case "charger", "box-adapter" -> -50;
                case "ground-loop" -> d[0] < 0.8 ? -35 : -6 * d[1];
                case "computer-tones" -> d[0] < 0.45 ? -10 - 15 * d[1] : 0;
                default -> 0;
            };
            case "unplug-charger" -> switch (cause) {
                case "charger" -> -50;
                case "ground-loop" -> d[2] < 0.35 ? -30 : 0;
                case "computer-tones" -> d[0] < 0.25 ? -10 - 15 * d[1] : 0;
                default -> 0;
            };
            case "box-on-battery" -> cause.equals("box-adapter") ? -50 : cause.equals("ground-loop") && d[3] < 0.12 ? -30 : 0;
            case "ground-lift" -> switch (cause) {
                case "ground-loop" -> d[1] < 0.93 ? -15 - 25 * d[4] : 0;
                case "charger" -> d[3] < 0.3 ? -3 - 12 * d[4] : d[3] > 0.95 ? 6 : 0;
                case "computer-tones" -> d[2] < 0.6 ? -12 - 18 * d[4] : 0;
                case "cable-screen" -> d[4] < 0.2 ? 8 * d[3] : 0;
                default -> 0;
            };
            case "other-cable" -> cause.equals("cable-screen") ? -20 - 30 * d[2] : cause.equals("magnetic-field") || cause.equals("dimmer") ? -2 + 4 * d[3] : 0;
            case "other-outlet" -> switch (cause) {
                case "ground-loop" -> -2 - 20 * d[3] * d[3];
                case "dimmer" -> d[1] < 0.2 ? -3 - 12 * d[4] : 0;
                default -> 0;
            };
            case "turn-instrument" -> switch (cause) {
                // From the angle it had to the quietest there is; the null is as deep as the field is uniform.
                case "magnetic-field" -> Math.min(0, Math.max(-10 - 20 * d[2], -60) - 20 * Math.log10(Math.max(0.03, Math.abs(Math.cos(Math.PI * d[1])))));
                case "instrument-screen" -> -6 + 10 * d[4];
                case "dimmer", "mobile" -> -5 + 8 * d[4];
                default -> 0;
            };
            case "move-away" -> switch (cause) {
                case "magnetic-field" -> -60 * Math.log10(1.4 + 2.6 * d[3]);
                case "dimmer" -> -12 * d[5];
                case "mobile" -> -20 * Math.log10(1.5 + 8 * d[3]);
                case "instrument-screen" -> -8 + 11 * d[5];
                default -> 0;
            };
            case "lights-off" -> cause.equals("dimmer") ? -50 : cause.equals("instrument-screen") ? -6 * d[5] * d[5] : 0;
            case "flight-mode" -> cause.equals("mobile") ? (d[5] < 0.95 ? -60 : 0) : 0;
            case "louder-earlier" -> switch (cause) {
                case "weak-signal" -> -8 - 6 * d[0];
                case "input-noise" -> left(d[1]) < -12 ? -12 : left(d[1]);
                case "ground-loop", "charger", "box-adapter", "computer-tones" -> d[5] < 0.4 ? -10 : 0;
                case "instrument-preamp" -> d[5] < 0.2 ? 4 : 0;
                default -> 0;
            };
            case "other-input" -> switch (cause) {
                case "input-noise" -> -8 - 14 * d[2];
                case "weak-signal" -> -4 + 7 * d[3];
                default -> 0;
            };
            default -> throw new IllegalArgumentException(trial);
        };
    }

    /** The share of an amplitude that stays. */
    private static double left(double share) {
        return 20 * Math.log10(Math.max(1e-3, share));
    }

    /** @param lamps how much of a dimmer's series is mixed in  @param tilted by 6 dB an octave */
    private double[] mains(double levelDbfs, Mains.Origin origin, double lamps, boolean tilted) {
        double[] amplitude = SERIES.get(origin);
        double[] dirt = SERIES.get(Mains.Origin.DIMMER);
        double hum = 0;
        double buzz = 0;
        for (int k = 1; k <= Mains.HIGHEST; k++) {
            double a = (amplitude[k - 1] + lamps * dirt[k - 1]) * (tilted ? k : 1);
            hum += k <= 5 ? a * a : 0;
            buzz += k > 5 ? a * a : 0;
        }
        double all = hum + buzz;
        return parts(levelDbfs + 10 * Math.log10(hum / all), levelDbfs + 10 * Math.log10(Math.max(1e-12, buzz / all)), NEVER_DB, NEVER_DB);
    }

    private static double[] plus(double[] power, Part part, double levelDbfs) {
        power[part.ordinal()] += Math.pow(10, levelDbfs / 10);
        return power;
    }

    private static double[] parts(double hum, double buzz, double hiss, double tone) {
        double[] power = new double[Part.values().length];
        power[Part.HUM.ordinal()] = Math.pow(10, hum / 10);
        power[Part.BUZZ.ordinal()] = Math.pow(10, buzz / 10);
        power[Part.HISS.ordinal()] = Math.pow(10, hiss / 10);
        power[Part.TONE.ordinal()] = Math.pow(10, tone / 10);
        return power;
    }

    private double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }
}
