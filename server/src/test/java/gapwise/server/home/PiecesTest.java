package gapwise.server.home;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.budget.WorkStoppedException;
import gapwise.server.admission.BusyException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Pieces that are begun, stopped and gone on with, whatever a clock says. */
class PiecesTest {
  private final List<String> worked = new ArrayList<>();
  private final Set<String> kept = new HashSet<>();
  private Instant now = Instant.EPOCH;
  private Duration took = Duration.ofSeconds(2);

  /** Pieces for which the time of a request is over after so many of them. */
  private Pieces pieces(int before) {
    int start = worked.size();
    Pieces pieces = new Pieces(() -> now);
    for (String name : List.of("table", "compared", "averages")) {
      pieces.and(
          () -> kept.contains(name),
          () -> {
            if (worked.size() - start == before) {
              throw WorkStoppedException.outOfTime(20);
            }
            worked.add(name);
            now = now.plus(took);
            kept.add(name);
          });
    }
    return pieces;
  }

  @Test
  void aFileThatOneRequestCannotWorkOutIsGoneOnWithByTheNext() {
    BusyException first = assertThrows(BusyException.class, () -> pieces(2).all());
    assertTrue(first.words().contains("kept"), first.words());
    assertTrue(first.seconds() > 0);
    pieces(2).all();
    assertEquals(List.of("table", "compared", "averages"), worked);
  }

  @Test
  void aPieceThatIsTooLongByItselfIsRefusedAsSuch() {
    assertThrows(WorkStoppedException.class, () -> pieces(0).all());
    assertEquals(List.of(), worked);
  }

  @Test
  void aPageFetchesOneLongPieceARequest() {
    Pieces pieces = pieces(9);
    assertFalse(pieces.areThere());
    pieces.next();
    assertEquals(List.of("table"), worked);
    pieces.next();
    pieces.next();
    assertTrue(pieces.areThere());
    pieces.next();
    assertEquals(3, worked.size());
  }

  @Test
  void piecesThatBeginWithinASecondComeTogether() {
    took = Duration.ofMillis(600);
    Pieces pieces = pieces(9);
    pieces.next();
    assertEquals(List.of("table", "compared"), worked);
    pieces.next();
    assertTrue(pieces.areThere());
  }

  @Test
  void anyOtherFailureIsNotTakenForOneOfTime() {
    Pieces failing =
        new Pieces()
            .and(() -> false, () -> {})
            .and(
                () -> false,
                () -> {
                  throw new IllegalStateException("of another kind");
                });
    assertThrows(IllegalStateException.class, failing::all);
  }
}
