package evenwood.sound;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * The demo's story: which faults are there and how strong.
 *
 * @param title  for people
 * @param faults amount of each fault that is there, in the unit its {@link DemoFault} names
 */
public record DemoScenario(String title, Map<DemoFault, Double> faults) {
    public DemoScenario {
        EnumMap<DemoFault, Double> copy = new EnumMap<>(DemoFault.class);
        copy.putAll(faults);
        faults = Collections.unmodifiableMap(copy);
    }

    /** An octave mandolin with a bridge piezo, no fault but the noise every chain has. */
    public static DemoScenario clean() {
        return new DemoScenario("demo: octave mandolin with a bridge piezo", Map.of());
    }

    /** The same in a kitchen: the fridge hums, the preamp is driven too hard, the bottom booms. */
    public static DemoScenario kitchen() {
        return new DemoScenario("demo: octave mandolin with a bridge piezo in a kitchen", Map.of())
            .with(DemoFault.FRIDGE_HUM).with(DemoFault.FRIDGE_BUZZ).with(DemoFault.PREAMP_OVERDRIVE).with(DemoFault.BOOM);
    }

    public DemoScenario with(DemoFault fault) {
        return with(fault, fault.usualAmount());
    }

    public DemoScenario with(DemoFault fault, double amount) {
        if (!Double.isFinite(amount)) {
            throw new IllegalArgumentException("demo scenario: " + fault + "=" + amount + ", but the amount must be a number");
        }
        EnumMap<DemoFault, Double> more = new EnumMap<>(DemoFault.class);
        more.putAll(faults);
        more.put(fault, amount);
        return new DemoScenario(title, more);
    }

    public DemoScenario without(DemoFault fault) {
        EnumMap<DemoFault, Double> fewer = new EnumMap<>(DemoFault.class);
        fewer.putAll(faults);
        fewer.remove(fault);
        return new DemoScenario(title, fewer);
    }

    OptionalDouble amount(DemoFault fault) {
        Double amount = faults.get(fault);
        return amount == null ? OptionalDouble.empty() : OptionalDouble.of(amount);
    }
}
