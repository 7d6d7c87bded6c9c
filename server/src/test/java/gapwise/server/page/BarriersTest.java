package gapwise.server.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.Axe;
import gapwise.server.testing.OwnBrowser;
import gapwise.server.testing.RunningServer;
import gapwise.server.testing.SharedServer;
import gapwise.server.testing.filled.EveryPage;
import gapwise.server.testing.filled.FilledServer;
import gapwise.server.testing.filled.FilledState;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.ExpectedConditions;

/**
 * That no page keeps anybody out: axe-core (WCAG 2.2 A and AA) finds nothing, nothing is wider than
 * the window, and the browser has no complaint, on the demonstration base and on an empty one.
 */
class BarriersTest {
  @TempDir static Path folder;
  private static RunningServer empty;
  @RegisterExtension private static final SharedServer SERVER = SharedServer.withDemonstration();

  @RegisterExtension private static final FilledServer FILLED = new FilledServer();

  @RegisterExtension private static final OwnBrowser BROWSER = new OwnBrowser();

  @BeforeAll
  static void open() throws Exception {
    empty = RunningServer.empty(folder.resolve("empty"));
  }

  @AfterAll
  static void close() {
    empty.close();
  }

  static Stream<FilledState> unfilled() {
    return EveryPage.unfilled(SERVER::address);
  }

  @ParameterizedTest
  @MethodSource("unfilled")
  void noPageHasABarrierOrAComplaintAtADeskOrOnAPhone(FilledState state) throws Exception {
    for (int width : new int[] {1280, 390}) {
      open(state, width);
      noBarrier(BROWSER.driver(), state.name() + " at " + width);
    }
  }

  static Stream<FilledState> filled() {
    return FILLED.states().stream();
  }

  /** With much on it, and every fold open. */
  @ParameterizedTest
  @MethodSource("filled")
  void noFilledPageHasABarrier(FilledState state) throws Exception {
    for (int width : new int[] {1280, 390}) {
      open(state, width);
      openEveryFold(BROWSER.driver());
      noBarrier(BROWSER.driver(), state.name() + " at " + width);
    }
  }

  /** Opens a page, of which the browser may complain that the page itself was refused. */
  private static void open(FilledState state, int width) {
    BROWSER.width(width);
    state.open(BROWSER.chromium());
    String refused = state.address() + " - Failed to load resource";
    List<String> others =
        BROWSER.complaints().stream().filter(one -> !one.startsWith(refused)).toList();
    assertEquals(List.of(), others, state.name());
  }

  /** What stands behind a fold or comes while one types is part of the page too. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "/studies?outcome=union",
        "/pooled?outcome=union",
        "/by-size?outcome=union",
        "/funnel?outcome=union&method=bone-transport",
        "/over-time?outcome=time-to-union",
        "/case?method=bone-transport&length=6&union=8&union-from=definitive-operation",
        "/claim?a=bone-transport&says=more&outcome=primary-union&b=induced-membrane&ways=all",
        "/map?view=comparisons"
      })
  void noPageHasABarrierWithEveryFoldOpen(String path) throws Exception {
    ChromeDriver driver = BROWSER.driver();
    for (int width : new int[] {1280, 390}) {
      BROWSER.at(SERVER.address(path), width);
      int opened = openEveryFold(driver);
      assertTrue(opened > 0, path + " has nothing to open at " + width);
      noBarrier(driver, path + ", all open, at " + width);
    }
  }

  /** Opens each fold by its own summary, as a reader would; gives how many were opened. */
  private static int openEveryFold(ChromeDriver driver) {
    int opened = 0;
    for (WebElement fold : driver.findElements(By.cssSelector("details:not([open])"))) {
      WebElement summary = fold.findElement(By.cssSelector("summary"));
      if (summary.isDisplayed()) {
        summary.sendKeys(Keys.ENTER);
        assertEquals("true", fold.getDomAttribute("open"));
        opened++;
      }
    }
    return opened;
  }

  @Test
  void aStudyOnTheDeskHasNoBarrier() throws Exception {
    ChromeDriver driver = BROWSER.driver();
    BROWSER.width(1280);
    driver.get(SERVER.address("/studies/invented-55"));
    BROWSER.follow("form[action$='/mend'] button");
    String draft = driver.getCurrentUrl().replaceFirst("#.*", "");
    BROWSER.assertAddress("/desk/");
    for (String path : new String[] {draft, draft + "/hand-in"}) {
      for (int width : new int[] {1280, 390}) {
        BROWSER.at(path, width);
        openEveryFold(driver);
        noBarrier(driver, path + " at " + width);
      }
    }
  }

  @Test
  void aFigureBeingReadHasNoBarrier() throws Exception {
    ChromeDriver driver = BROWSER.driver();
    BROWSER.width(1280);
    Path picture = folder.resolve("figure.png");
    ImageIO.write(
        new BufferedImage(400, 300, BufferedImage.TYPE_BYTE_GRAY), "png", picture.toFile());
    driver.get(empty.address("/desk"));
    BROWSER.leave(() -> BROWSER.find("#study").sendKeys("figure-2031", Keys.ENTER));
    driver.findElement(By.id("picture")).sendKeys(picture.toString());
    BROWSER.follow("form[action$='/picture'] button");
    String figure = driver.getCurrentUrl();
    BROWSER.assertAddress("figure?image=");
    for (int width : new int[] {1280, 390}) {
      BROWSER.width(width);
      for (String kind : new String[] {"curve", "scatter"}) {
        driver.get(figure);
        driver.findElement(By.id("kind-" + kind)).click();
        openEveryFold(driver);
        WebElement points = driver.findElement(By.id("points"));
        points.sendKeys("1 2\n3 4" + Keys.TAB);
        noBarrier(driver, "a figure, " + kind + ", at " + width);
        BROWSER.follow("#figure .numbers > button");
        BROWSER.find("#made li");
        noBarrier(driver, "a figure not whole, " + kind + ", at " + width);
      }
    }
  }

  @Test
  void whatIsUnderstoodWhileOneTypesHasNoBarrier() throws Exception {
    ChromeDriver driver = BROWSER.driver();
    for (int width : new int[] {1280, 390}) {
      BROWSER.width(width);
      driver.get(SERVER.address("/studies"));
      driver.findElement(By.id("q")).sendKeys("union bone transport 5-8 cm infected");
      BROWSER.fetched("infected");
      BROWSER
          .await()
          .until(
              ExpectedConditions.textToBePresentInElementLocated(
                  By.id("understood"), "missing bone 5 to 8 cm"));
      noBarrier(driver, "words understood at " + width);
    }
  }

  /** Before the first study is added every page says what to do, and none is broken. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "/",
        "/studies",
        "/map",
        "/map?view=comparisons",
        "/pooled?outcome=union",
        "/by-size?outcome=union",
        "/funnel?outcome=union",
        "/over-time?outcome=time-to-union",
        "/case?method=bone-transport&length=6&union=8&union-from=definitive-operation",
        "/claim?a=bone-transport&says=more&outcome=union&b=induced-membrane"
      })
  void noPageOfAnEmptyBaseHasABarrier(String path) throws Exception {
    ChromeDriver driver = BROWSER.driver();
    for (int width : new int[] {1280, 390}) {
      BROWSER.at(empty.address(path), width);
      noBarrier(driver, path + ", no study yet, at " + width);
    }
  }

  private static void noBarrier(ChromeDriver driver, String state) throws Exception {
    assertEquals(List.of(), Axe.barriers(driver), state);
    assertTrue(BROWSER.tooWide() <= 0, state + " is too wide by " + BROWSER.tooWide());
    assertEquals(List.of(), BROWSER.complaints(), state);
  }

  @Test
  void anErrorPageHasNoBarrier() throws Exception {
    BROWSER.at(SERVER.address("/studies?from=8&to=5"), 1280);
    assertEquals(List.of(), Axe.barriers(BROWSER.driver()));
    BROWSER.complaints(); // the browser notes the status 422, which is meant
  }
}
