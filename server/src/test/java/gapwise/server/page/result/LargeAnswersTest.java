package gapwise.server.page.result;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.Invented;
import gapwise.server.testing.RunningServer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** More series than a page can show: some are drawn, all are counted, and the table has them. */
class LargeAnswersTest {
  private static final int SERIES = 2000;

  /** Bytes of a page before it is packed (our choice). */
  private static final int MOST_BYTES = 400_000;

  @TempDir static Path folder;
  private static RunningServer running;

  @BeforeAll
  static void open() {
    running = RunningServer.with(folder.resolve("home"), Invented.many(SERIES));
  }

  @AfterAll
  static void close() {
    running.close();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/studies?outcome=union",
        "/pooled?whole=yes&outcome=union",
        "/pooled?whole=yes&outcome=time-to-union",
        "/pooled?whole=yes&outcome=union&method=bone-transport",
        "/api/v1/forest.svg?outcome=union",
        "/by-size?whole=yes&outcome=union",
        "/funnel?whole=yes&outcome=union&method=bone-transport",
        "/claim?whole=yes&a=bone-transport&says=more&outcome=union&b=induced-membrane",
        "/map",
        "/"
      })
  void aPageStaysSmall(String path) throws Exception {
    int bytes = running.get(path).body().getBytes(StandardCharsets.UTF_8).length;
    assertTrue(bytes <= MOST_BYTES, path + " has " + bytes + " bytes");
  }

  @Test
  void thePageSaysWhichSeriesAreDrawnAndItsTableHasAll() throws Exception {
    String page =
        running.get("/pooled?whole=yes&outcome=union").body().replaceAll("<[^>]*>|\\s+", " ");
    assertTrue(
        page.replaceAll(" +", " ")
            .contains(
                "80 of 2,000 series are drawn: of each method at most 40, those with the most"
                    + " patients; the table (CSV) lists all. The pooled values are from all."),
        page);
    String csv = running.get("/api/v1/forest.csv?outcome=union").body();
    assertEquals(SERIES, csv.lines().filter(line -> line.startsWith("series,")).count());
  }
}
