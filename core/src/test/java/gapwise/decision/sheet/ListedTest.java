package gapwise.decision.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class ListedTest {
  @Test
  void thatMoreStandElsewhereIsSaidOnlyWhereSomeStandHere() {
    Listed one = Listed.of(List.of("Head."), List.of("One.", "Two."), 1, List.of("Tail."));
    assertEquals(
        List.of("Head.", "One.", "1 more stands on the page Compare.", "Tail."), one.sentences());
    assertEquals(
        List.of("Head.", "2 stand on the page Compare, for want of room here.", "Tail."),
        one.less().orElseThrow().sentences());
  }
}
