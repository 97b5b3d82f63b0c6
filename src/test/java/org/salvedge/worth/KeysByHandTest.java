package org.salvedge.worth;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.salvedge.worth.turn.BenchModel;

/** Records whose equality is written by hand: one that left a component out would take two questions for the same. */
class KeysByHandTest {
    @ParameterizedTest
    @ValueSource(classes = {Kind.class, BenchModel.OnBench.class})
    void theyAreTheSameOnlyIfEachComponentIs(Class<?> type) throws ReflectiveOperationException {
        RecordComponent[] components = type.getRecordComponents();
        Class<?>[] types =
                Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
        Constructor<?> maker = type.getDeclaredConstructor(types);
        maker.setAccessible(true);
        Object[] values = Arrays.stream(types).map(t -> value(t, 1)).toArray();
        Object one = maker.newInstance(values);
        assertThat(maker.newInstance(values)).isEqualTo(one).hasSameHashCodeAs(one);
        for (int c = 0; c < types.length; c++) {
            Object[] other = values.clone();
            other[c] = value(types[c], 2);
            assertThat(maker.newInstance(other))
                    .as(type.getSimpleName() + " of another " + components[c].getName())
                    .isNotEqualTo(one);
        }
    }

    private static Object value(Class<?> type, int which) {
        if (type == int.class) {
            return which;
        }
        if (type == double.class) {
            return which / 4.0;
        }
        if (type == boolean.class) {
            return which > 1;
        }
        if (type == String.class) {
            return "text " + which;
        }
        throw new IllegalArgumentException("say how two values of " + type + " are made");
    }
}
