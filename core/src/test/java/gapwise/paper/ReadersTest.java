package gapwise.paper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.budget.Budget;
import gapwise.budget.Work;
import gapwise.budget.WorkStoppedException;
import gapwise.paper.Refused.Reason;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Whatever one paper does to the process that reads it, the next paper is read. */
@Timeout(value = 2, unit = TimeUnit.MINUTES)
class ReadersTest {
  private static final Caps SHORT = Caps.STANDARD.withMilliseconds(300);

  @TempDir Path folder;

  private final Readers unruly = new Readers(UnrulyReader.class.getName());

  @AfterEach
  void end() {
    unruly.endAll();
  }

  private Opening open(String name) {
    return Paper.open(folder.resolve(name), SHORT, unruly);
  }

  private Reason refused(String name) {
    return assertInstanceOf(Refused.class, open(name)).reason();
  }

  private void assertNextIsRead() {
    assertEquals(3, assertInstanceOf(Opened.class, open("harmless.pdf")).paper().pages());
  }

  @Test
  void papersThatNeverEndAreEndedAndKeepNoOtherFromBeingRead() {
    assertNextIsRead();
    List<CompletableFuture<Reason>> endless =
        IntStream.range(0, 3)
            .mapToObj(i -> CompletableFuture.supplyAsync(() -> refused("endless.pdf")))
            .toList();
    endless.forEach(one -> assertEquals(Reason.TOO_SLOW, one.join()));
    assertNextIsRead();
  }

  @Test
  void aPaperThatTakesAllMemoryIsToldToAndNoOtherIsHurt() {
    Opening greedy = Paper.open(folder.resolve("greedy.pdf"), Caps.STANDARD, unruly);
    assertEquals(Reason.TOO_MUCH, assertInstanceOf(Refused.class, greedy).reason());
    assertNextIsRead();
  }

  @Test
  void aPaperThatEndsItsReaderOrMakesItTalkNonsenseIsDamaged() {
    assertEquals(Reason.DAMAGED, refused("crash.pdf"));
    assertNextIsRead();
    assertEquals(Reason.DAMAGED, refused("garbled.pdf"));
    assertNextIsRead();
  }

  @Test
  void whoeverNoLongerWaitsIsLetGoAtOnceAndTheReaderSoonAfter() {
    Work work = Work.within(Budget.UNLIMITED);
    CompletableFuture<Boolean> stopped =
        CompletableFuture.supplyAsync(
            () -> {
              try {
                work.join(() -> open("endless.pdf"));
                return false;
              } catch (WorkStoppedException gone) {
                return true;
              }
            });
    work.abandon();
    assertTrue(stopped.join());
    assertNextIsRead();
  }

  @Test
  void aReaderEndsWhenNobodySpeaksToItAnyMoreAndLeavesNoFile() throws Exception {
    Reader reader = Reader.start(Readers.MAIN);
    Path file = new Drawn().save(folder);
    Ask ask = new Ask(Ask.What.OPEN, 1, file.toString(), Caps.STANDARD, 0, 0);
    assertInstanceOf(Reader.Said.class, reader.ask(ask).get());
    assertTrue(reader.isAlive());
    reader.leave();
    reader.end().get();
    assertFalse(reader.isAlive());
    assertFalse(Files.exists(reader.folder().path()), "temporary files are gone");
  }

  @Test
  void aFileIsOpenedAgainWhereItsProcessEndedMeanwhile() throws IOException {
    try (Drawn drawn = new Drawn()) {
      drawn.text(100, 100, 10, "still");
      Path file = drawn.save(folder);
      Readers own = new Readers(Readers.MAIN);
      Paper paper = assertInstanceOf(Opened.class, Paper.open(file, Caps.STANDARD, own)).paper();
      own.endAll();
      Page page = assertInstanceOf(Page.class, paper.page(1));
      assertEquals("still", page.words().get(0).text());
      own.endAll();
    }
  }
}
