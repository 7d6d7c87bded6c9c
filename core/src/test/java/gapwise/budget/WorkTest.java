package gapwise.budget;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class WorkTest {
  @Test
  void aCountOverItsLimitIsRefusedWithTheLimitAndTheWayOut() {
    Work work = Work.within(Budget.STANDARD.with(Limit.ROWS, 10));
    WrongInputException refused =
        assertThrows(
            WrongInputException.class,
            () ->
                work.join(
                    () -> {
                      Work.require(Limit.ROWS, 1_234, "source", "Split the data.");
                      return 0;
                    }));
    assertEquals(
        List.of(
            new Problem(
                "source",
                "over-the-limit",
                "Found 1,234 rows of data; at most 10 are taken. Split the data.")),
        refused.problems());
  }

  @Test
  void workThatNobodyBoundHasNoLimits() {
    Work.require(Limit.TREATMENTS, Long.MAX_VALUE, "source", "Nothing to do.");
    Work.check();
    assertEquals(Long.MAX_VALUE, Work.current().budget().most(Limit.SECONDS));
  }

  @Test
  void abandonedWorkEndsAtItsNextCheckInEveryThreadThatTakesPart() {
    Work work = Work.within(Budget.STANDARD);
    work.abandon();
    long stopped =
        IntStream.range(0, 100)
            .parallel()
            .filter(
                part ->
                    assertThrows(
                            WorkStoppedException.class,
                            () ->
                                work.join(
                                    () -> {
                                      Work.check();
                                      return part;
                                    }))
                        .isAbandoned())
            .count();
    assertEquals(100, stopped);
    Work.check();
  }

  @Test
  void workEndsWhenItsTimeIsOver() {
    Work work = Work.within(Budget.STANDARD.with(Limit.SECONDS, 1));
    WorkStoppedException over =
        assertThrows(
            WorkStoppedException.class,
            () ->
                work.join(
                    () -> {
                      while (true) {
                        Work.check();
                      }
                    }));
    assertFalse(over.isAbandoned());
    assertEquals("takes-too-long", over.problem().code());
    assertTrue(over.getMessage().contains("(limit: 1 s)"), over.getMessage());
  }

  @Test
  void workWithinWorkEndsWithTheInnerOneAndLeavesTheOuterBound() {
    Work outer = Work.within(Budget.STANDARD);
    Work inner = Work.within(Budget.UNLIMITED);
    outer.join(
        () -> {
          assertEquals(inner, inner.join(Work::current));
          assertEquals(outer, Work.current());
          return 0;
        });
  }
}
