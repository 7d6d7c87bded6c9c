package gapwise.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.figure.forest.InventedForests;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Which series of many are drawn, on lists short enough to count by hand. */
class LargeTest {
  private static final List<Integer> SIZES = List.of(5, 30, 12, 30, 7, 41);

  @Test
  void theLargestStandInTheirOrder() {
    assertEquals(List.of(30, 30, 41), Large.largest(SIZES, 3, Integer::doubleValue));
    assertEquals(List.of(30, 41), Large.largest(SIZES, 2, Integer::doubleValue));
    assertEquals(SIZES, Large.largest(SIZES, 6, Integer::doubleValue));
  }

  @Test
  void ofAllSizesTheSmallestAndTheLargestAreAlwaysThere() {
    assertEquals(List.of(5, 41), Large.ofAllSizes(SIZES, 2, Integer::doubleValue));
    List<Integer> many = IntStream.rangeClosed(1, 100).boxed().toList();
    // From the largest down: places 0, 24, 49, 74 and 99.
    assertEquals(List.of(1, 26, 51, 76, 100), Large.ofAllSizes(many, 5, Integer::doubleValue));
  }

  /** 80 in all: one part alone has 80, two have 40, a small one leaves its room to the other. */
  @Test
  void eachPartHasAsManyAsLeaveRoomForAll() {
    assertEquals(80, Large.mostOfEach(List.of(500)));
    assertEquals(40, Large.mostOfEach(List.of(500, 500)));
    assertEquals(70, Large.mostOfEach(List.of(500, 10)));
    assertEquals(1, Large.mostOfEach(IntStream.range(0, 200).mapToObj(part -> 3).toList()));
  }

  @Test
  void whatIsPooledIsSaidToBeFromAllAndNothingOfItWhereNoneIs() {
    assertEquals(
        "Some are drawn. The pooled values are from all.",
        Large.withPooled("Some are drawn.", InventedForests.twoMethods()));
    assertEquals(
        "Some are drawn.",
        Large.withPooled("Some are drawn.", InventedForests.oneSeriesAndAnEmptyBlock()));
  }
}
