package gapwise.selection;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.search.IndexedArm;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class PoolableArmsTest {
  private static IndexedArm arm(String study, Optional<String> apart) {
    return new IndexedArm(
        study,
        "bone-transport",
        Optional.empty(),
        Optional.empty(),
        OptionalDouble.of(5),
        OptionalInt.of(10),
        apart);
  }

  @Test
  void whatIsNeverPooledIsNotCountedButToldOf() {
    List<String> counted = new ArrayList<>();
    PoolableArms arms = new PoolableArms(one -> counted.add(one.studyId()));
    arms.accept(arm("a", Optional.empty()));
    arms.accept(arm("b", Optional.of("retracted")));
    arms.accept(arm("c", Optional.of("outside the question of the review")));
    arms.accept(arm("d", Optional.of("retracted")));
    assertEquals(List.of("a"), counted);
    assertEquals(
        Optional.of(
            "3 further groups are kept apart, never pooled and not counted here: 1 outside the"
                + " question of the review, 2 retracted."),
        arms.keptApart());
  }

  @Test
  void nothingKeptApartIsNothingToTell() {
    PoolableArms arms = new PoolableArms(one -> {});
    arms.accept(arm("a", Optional.empty()));
    assertEquals(Optional.empty(), arms.keptApart());
  }
}
