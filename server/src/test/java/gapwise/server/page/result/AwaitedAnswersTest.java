package gapwise.server.page.result;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.answer.Answer;
import gapwise.answer.Answers;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.search.SearchRequest;
import gapwise.selection.Question;
import gapwise.server.home.Hold;
import gapwise.server.testing.Invented;
import gapwise.server.testing.OwnBrowser;
import gapwise.server.testing.RunningServer;
import java.net.URI;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.chrome.ChromeDriver;

/**
 * Questions that a thousand groups and more answer: the page comes at once and fetches its answer.
 * Each test asks what no other asks, so that nothing of it is remembered.
 */
class AwaitedAnswersTest {
  private static final int SERIES = 1040;

  @RegisterExtension private static final OwnBrowser BROWSER = new OwnBrowser();

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

  private static String body(String path) throws Exception {
    HttpResponse<String> answer = running.get(path);
    assertEquals(200, answer.statusCode(), answer.body());
    return answer.body();
  }

  private static String main(String page) {
    return page.substring(page.indexOf("<main"), page.indexOf("</main>"));
  }

  /** What stands on a page whose lines are put in by one step more. */
  private static String words(String html) {
    return html.replaceAll("\\s+", " ");
  }

  @ParameterizedTest
  @CsvSource({
    // The rows, the answer, what the page makes of it.
    "/pooled, outcome=union&least=2, 3",
    // The same, with two bands of size before the last.
    "/by-size, outcome=union&least=5&cuts=5, 5",
    "/funnel, outcome=union&least=3, 2",
    "/over-time, outcome=time-to-union&least=2, 2",
    "/claim, a=bone-transport&says=more&b=induced-membrane&outcome=union&least=9, 1"
  })
  void thePageComesAtOnceAndItsAnswerIsFetchedPieceByPiece(String page, String query, int pieces)
      throws Exception {
    String waiting = body(page + "?" + query);
    assertTrue(waiting.contains("hx-get=\"" + page + "/result?"), waiting);
    assertTrue(waiting.contains("1,040 groups of patients report this outcome."), waiting);
    assertTrue(waiting.contains("<progress class=\"bar\""), waiting);
    assertTrue(waiting.contains("&amp;whole=yes\">Show the result</a></p></noscript>"), waiting);
    assertTrue(waiting.contains("<h1>") && waiting.contains("class=\"chips\""), waiting);
    int fetched = 0;
    String part = body(page + "/result?" + query);
    while (fetched < pieces && part.contains("hx-get=\"" + page + "/result?")) {
      fetched++;
      part = body(page + "/result?" + query);
    }
    assertTrue(fetched < pieces, "fetched " + fetched);
    assertFalse(part.contains("<html"), part);
    String whole = main(body(page + "?" + query));
    assertFalse(whole.contains("hx-get=\"" + page + "/result?"), whole);
    assertFalse(whole.contains("whole=yes"), whole);
    assertTrue(words(whole).contains(words(part).strip()), whole);
  }

  @Test
  void thePlaceOfACaseIsFetchedAndNothingOfTheCaseIsKept() throws Exception {
    String query = "method=bone-transport&union=8&union-from=definitive-operation&length=6";
    for (int time = 0; time < 2; time++) {
      String waiting = body("/case?" + query);
      assertTrue(waiting.contains("hx-get=\"/case/result?"), waiting);
      assertTrue(
          waiting.contains("1,040 groups of patients report what this case has reached."), waiting);
      assertTrue(waiting.contains("<h2>The case, to change</h2>"), waiting);
    }
    String part = body("/case/result?" + query);
    assertTrue(part.contains("The plans behind these places"), part);
    assertFalse(part.contains("<html") || part.contains("<progress"), part);
    String whole = main(body("/case?" + query + "&whole=yes"));
    assertTrue(words(whole).contains(words(part).strip()), whole);
    assertFalse(whole.contains("whole=yes"), whole);
  }

  @Test
  void withoutScriptALinkShowsTheWholePage() throws Exception {
    String whole = body("/pooled?outcome=union&least=4&whole=yes");
    assertFalse(whole.contains("<progress"), whole);
    assertTrue(whole.contains("The plan behind this result"), whole);
    assertFalse(main(whole).contains("whole=yes"), whole);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/pooled?outcome=union&method=bone-transport",
        "/pooled",
        "/by-size",
        "/claim",
        "/pooled?outcome=flap-loss"
      })
  void fewerGroupsAreAnsweredAtOnce(String path) throws Exception {
    assertFalse(body(path).contains("<progress"));
  }

  @Test
  void aFileOfTheSameQuestionIsMadeFromTheSameAnswer() throws Exception {
    Question question =
        new Question(Outcome.of("union"), SearchRequest.EVERYTHING, Optional.empty(), 6);
    try (Hold hold = running.home().hold()) {
      Answers answers = hold.evidence().answers();
      assertFalse(answers.hasAsked(question, Optional.empty()));
      body("/api/v1/forest.csv?outcome=union&least=6");
      assertTrue(answers.hasAsked(question, Optional.empty()));
      Answer answer = answers.ask(question);
      assertFalse(body("/pooled?outcome=union&least=6&whole=yes").contains("<progress"));
      assertSame(answer, answers.ask(question));
    }
  }

  @Test
  void aPlanThatIsSentTwiceGivesTheSame() throws Exception {
    String plan = body("/api/v1/plan.json?outcome=union&method=bone-transport&least=7");
    HttpResponse<String> first = sent(plan);
    assertEquals(200, first.statusCode(), first.body());
    assertEquals(first.body(), sent(plan).body());
  }

  private static HttpResponse<String> sent(String plan) throws Exception {
    return running.send(
        HttpRequest.newBuilder(URI.create(running.address("/api/v1/syntheses")))
            .header("Content-Type", "application/json")
            .POST(BodyPublishers.ofString(plan)));
  }

  @Test
  void aBrowserPutsTheAnswerInThePlaceOfTheBar() {
    ChromeDriver driver = BROWSER.at(running.address("/pooled?outcome=union&least=8"), 390);
    BROWSER.find(".told#result");
    assertTrue(driver.findElements(By.tagName("progress")).isEmpty());
    assertEquals(1, driver.findElements(By.tagName("h1")).size());
    assertEquals(1, driver.findElements(By.id("result")).size());
    assertEquals("#result", driver.findElement(By.cssSelector("a.skip")).getDomAttribute("href"));
  }
}
