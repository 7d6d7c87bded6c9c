package gapwise.server.supplement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.budget.Budget;
import gapwise.budget.Limit;
import gapwise.datapackage.PackageReader;
import gapwise.server.admission.Bounds;
import gapwise.server.home.Home;
import gapwise.server.testing.Invented;
import gapwise.server.testing.RunningServer;
import gapwise.supplement.Rerun;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Everything behind a result as one archive, from the page that tells it. */
class SupplementDownloadsTest {
  /** However slow the machine, what is asked here is not how long it takes. */
  private static final Budget UNHURRIED = Budget.STANDARD.with(Limit.SECONDS, 600);

  @TempDir static Path homes;
  private static RunningServer server;

  @TempDir Path folder;

  @BeforeAll
  static void start() {
    try (Home home = Home.open(homes, Clock.systemUTC())) {
      home.base().saveAll(Invented.studies().iterator(), "reviewer", "for a test", List.of());
    }
    Bounds usual = Bounds.standard();
    server =
        RunningServer.within(
            new Bounds(
                usual.connections(),
                usual.header(),
                usual.body(),
                usual.answer(),
                usual.answerBytes(),
                usual.spoolBytes(),
                usual.computing(),
                usual.waiting(),
                UNHURRIED),
            homes);
  }

  @AfterAll
  static void stop() {
    server.close();
  }

  private HttpResponse<Path> taken(String path) throws Exception {
    return HttpClient.newHttpClient()
        .send(
            HttpRequest.newBuilder(URI.create(server.address(path))).build(),
            HttpResponse.BodyHandlers.ofFile(folder.resolve("taken.zip")));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/api/v1/supplement.zip?outcome=union",
        "/api/v1/by-size-supplement.zip?outcome=union",
        "/api/v1/funnel-supplement.zip?outcome=union",
        "/api/v1/compare-supplement.zip?from=4"
      })
  void itRunsAgainToTheSameNumbers(String path) throws Exception {
    HttpResponse<Path> answer = taken(path);
    assertEquals(200, answer.statusCode(), path);
    assertEquals("application/zip", answer.headers().firstValue("Content-Type").orElse(""));
    try (PackageReader reader = PackageReader.open(answer.body())) {
      Rerun.Done done = Rerun.of(reader, "test", Budget.UNLIMITED);
      assertTrue(done.equal() && done.numbers() > 0, () -> done.analyses().toString());
      assertTrue(done.invented());
      if (path.contains("compare")) {
        assertTrue(reader.file("tables/summary-of-findings.csv").isPresent());
      } else {
        String pdf =
            reader.files().stream()
                .map(file -> file.path())
                .filter(file -> file.endsWith(".pdf"))
                .findFirst()
                .orElseThrow();
        byte[] bytes = reader.read(reader.file(pdf).orElseThrow()).readAllBytes();
        try (PDDocument document = Loader.loadPDF(bytes)) {
          assertEquals(1, document.getNumberOfPages());
        }
      }
    }
  }

  @Test
  void aPageOffersItAmongItsFiles() throws Exception {
    assertTrue(
        server
            .get("/pooled?outcome=union")
            .body()
            .contains("href=\"/api/v1/supplement.zip?outcome=union\""));
  }

  @Test
  void whatAsksNothingIsToldInWords() throws Exception {
    assertEquals(422, server.get("/api/v1/supplement.zip").statusCode());
    assertEquals(422, server.get("/api/v1/supplement.zip?outcome=nothing").statusCode());
  }
}
