package gapwise.server.home;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is kept, and what goes first where answers hold many rows. */
class RememberedTest {
  private final List<Integer> worked = new ArrayList<>();

  /** Answers that hold as many rows as is asked for; at most five, of a hundred rows together. */
  private final Remembered<Integer, Integer> kept =
      new Remembered<>(
          5,
          100,
          rows -> rows,
          rows -> {
            worked.add(rows);
            if (rows < 0) {
              throw new IllegalStateException("cannot be worked out");
            }
            return rows;
          });

  private void ask(int... each) {
    for (int rows : each) {
      assertEquals(rows, kept.of(rows));
    }
  }

  @Test
  void theSameIsWorkedOutOnce() {
    ask(40, 40, 60, 40, 60);
    assertEquals(List.of(40, 60), worked);
  }

  @Test
  void ofMoreRowsThanAreKeptThoseAskedLeastRecentlyGo() {
    ask(40, 60, 40, 30);
    assertTrue(kept.has(40) && kept.has(30));
    assertFalse(kept.has(60));
    ask(31);
    assertFalse(kept.has(40));
    assertTrue(kept.has(30) && kept.has(31));
  }

  @Test
  void anAnswerOfMoreRowsThanAreKeptStaysUntilTheNext() {
    ask(10, 1000, 1000);
    assertTrue(kept.has(1000));
    assertFalse(kept.has(10));
    assertEquals(List.of(10, 1000), worked);
    ask(20);
    assertFalse(kept.has(1000));
    assertTrue(kept.has(20));
  }

  @Test
  void answersWithoutRowsAreBoundByTheirNumber() {
    ask(0, 1, 2, 3, 4, 5);
    assertFalse(kept.has(0));
    assertTrue(kept.has(1) && kept.has(5));
  }

  @Test
  void whatFailsIsNotKept() {
    assertThrows(IllegalStateException.class, () -> kept.of(-1));
    assertFalse(kept.has(-1));
    assertThrows(IllegalStateException.class, () -> kept.of(-1));
    assertEquals(List.of(-1, -1), worked);
  }
}
