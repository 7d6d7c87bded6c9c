package gapwise.sentence;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CountedTest {
  @ParameterizedTest
  @ValueSource(longs = {0, 1, 9, 10, 999, 1000, 1001, 1099, 12_345, 999_999, 1_000_000, 20_030_004})
  void numbersAreGroupedAsJavaGroupsThem(long number) {
    assertEquals(String.format(Locale.ROOT, "%,d", number), Counted.grouped(number));
  }

  @Test
  void theWordFollowsTheNumber() {
    assertEquals("0 studies", Counted.of(0, "study", "studies"));
    assertEquals("1 study", Counted.of(1, "study", "studies"));
    assertEquals("1,204 studies", Counted.of(1204, "study", "studies"));
  }
}
