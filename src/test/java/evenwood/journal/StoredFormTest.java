package evenwood.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenwood.coach.Assessment;
import evenwood.measure.LevelReading;
import evenwood.measure.NoiseReading;
import evenwood.rig.Rig;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class StoredFormTest {
    private static final Set<Class<?>> PLAIN = Set.of(double.class, Double.class, int.class, Integer.class, long.class, boolean.class,
        Boolean.class, String.class, double[].class, int[].class, byte[].class, Object.class);

    @Test
    void aMeasuredTakeComesBackAsItWas() {
        Assessment assessment = KeptExamples.measured().assessment();
        Assessment back = StoredForm.unpacked(StoredForm.packed(assessment), Assessment.class);
        assertThat(StoredForm.json(back)).isEqualTo(StoredForm.json(assessment));
        assertThat(back.verdict()).isEqualTo(assessment.verdict());
        assertThat(back.moves()).isEqualTo(assessment.moves()).isNotEmpty();
        assertThat(back.predicted()).isEqualTo(assessment.predicted()).isPresent();
        assertThat(back.readings().notes()).isEqualTo(assessment.readings().notes());
        assertThat(back.readings().activity().states()).isEqualTo(assessment.readings().activity().states());
    }

    @Test
    void aRigComesBackWithItsWiring() {
        Rig rig = KeptExamples.rig();
        Rig back = StoredForm.unpacked(StoredForm.packed(rig), Rig.class);
        assertThat(back).isEqualTo(rig);
        assertThat(StoredForm.fingerprint(back)).isEqualTo(StoredForm.fingerprint(rig));
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void everyBitOfANumberComesBack(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 200; i++) {
            double any = Double.longBitsToDouble(random.nextLong());
            double finite = Double.isFinite(any) ? any : -0.0;
            LevelReading reading = new LevelReading(Double.isNaN(any) ? Double.POSITIVE_INFINITY : any, Double.NEGATIVE_INFINITY, finite, random.nextLong());
            assertThat(StoredForm.unpacked(StoredForm.packed(reading), LevelReading.class)).isEqualTo(reading);
        }
    }

    /** A type that nobody taught the journal would only show when somebody keeps a take that has one. */
    @Test
    void everythingATakeOrARigCanHoldCanBeKept() {
        Set<Type> seen = new HashSet<>();
        Set<String> unknown = new HashSet<>();
        for (Class<?> root : List.of(Assessment.class, Rig.class, Practice.Figures.class)) {
            walk(root, seen, unknown);
        }
        assertThat(unknown).isEmpty();
        assertThat(seen).as("the walk got to the deep ends").contains(NoiseReading.class).hasSizeGreaterThan(60);
    }

    private static void walk(Type type, Set<Type> seen, Set<String> unknown) {
        if (!seen.add(type)) {
            return;
        }
        if (type instanceof ParameterizedType container) {
            if (!Set.of(Optional.class, List.class, Map.class).contains(container.getRawType())) {
                unknown.add(type.getTypeName());
            }
            Arrays.stream(container.getActualTypeArguments()).forEach(each -> walk(each, seen, unknown));
        } else if (type instanceof Class<?> plain && plain.isRecord()) {
            for (RecordComponent component : plain.getRecordComponents()) {
                walk(component.getGenericType(), seen, unknown);
            }
        } else if (type instanceof Class<?> plain && plain.isInterface() && plain.isSealed()) {
            Arrays.stream(plain.getPermittedSubclasses()).forEach(each -> walk(each, seen, unknown));
        } else if (!(type instanceof Class<?> plain && (plain.isEnum() || plain == OptionalDouble.class || PLAIN.contains(plain)))) {
            unknown.add(type.getTypeName());
        }
    }

    record Before(double levelDb, String gone) { }

    record After(double levelDb, OptionalDouble added, List<String> words, double alsoAdded) { }

    @Test
    void aTakeOfAnOlderProgramIsReadWithWhatItHas() {
        assertThat(StoredForm.unpacked(StoredForm.packed(new Before(-3.5, "x")), After.class))
            .isEqualTo(new After(-3.5, OptionalDouble.empty(), List.of(), Double.NEGATIVE_INFINITY));
    }

    @Test
    void whatIsNoRecordAnyMoreIsOneLine() {
        byte[] packed = StoredForm.packed(KeptExamples.rig());
        packed[packed.length / 2] ^= 0x55;
        assertThatThrownBy(() -> StoredForm.unpacked(packed, Rig.class)).isInstanceOf(JournalProblem.class)
            .hasMessageStartingWith("journal: one entry is damaged (").hasMessageEndingWith("a backup may still have it");
    }
}
