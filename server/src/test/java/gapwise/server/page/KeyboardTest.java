package gapwise.server.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.Chromium;
import gapwise.server.testing.RunningServer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.ExpectedConditions;

/** The pages that explore by size, by keys alone, at a desk and on a phone. */
class KeyboardTest {
  @TempDir static Path folder;
  private static RunningServer running;
  private static Chromium browser;

  @BeforeAll
  static void open() throws Exception {
    running = RunningServer.withStudies(folder.resolve("home"));
    browser = Chromium.open(folder);
  }

  @AfterAll
  static void close() {
    browser.close();
    running.close();
  }

  private static ChromeDriver at(String path, int width) {
    browser.width(width);
    browser.driver().get(running.address(path));
    return browser.driver();
  }

  private static WebElement focused() {
    return browser.driver().switchTo().activeElement();
  }

  private static void press(CharSequence... keys) {
    focused().sendKeys(keys);
  }

  /** Presses Tab until something is reached. */
  private static WebElement tabTo(String what, Predicate<WebElement> reached) {
    for (int presses = 0; presses < 90; presses++) {
      if (reached.test(focused())) {
        return focused();
      }
      press(Keys.TAB);
    }
    throw new AssertionError("the Tab key does not reach " + what);
  }

  private static WebElement tabTo(String id) {
    return tabTo(id, element -> id.equals(element.getDomAttribute("id")));
  }

  @ParameterizedTest
  @CsvSource({
    "/studies?outcome=union, 1280", "/studies?outcome=union, 390",
    "/by-size?outcome=union, 1280", "/by-size?outcome=union, 390",
    "/map?outcome=union, 1280", "/map?outcome=union, 390"
  })
  void theFirstTabOffersToSkipTheFrameAndTheNextIsInTheContent(String path, int width) {
    ChromeDriver driver = at(path, width);
    driver.findElement(By.tagName("body")).sendKeys(Keys.TAB);
    assertEquals("Skip to the first result", focused().getText());
    press(Keys.ENTER);
    press(Keys.TAB);
    assertEquals(
        true,
        driver.executeScript(
            "return document.querySelector('main').contains(document.activeElement)"));
  }

  @ParameterizedTest
  @CsvSource({
    "/studies?outcome=union, 1280", "/studies?outcome=union, 390",
    "/by-size?outcome=union, 1280", "/by-size?outcome=union, 390",
    "/map?outcome=union, 1280", "/map?outcome=union, 390"
  })
  void tabGoesDownThePageAndEveryStopIsSeen(String path, int width) {
    ChromeDriver driver = at(path, width);
    List<String> unseen = new ArrayList<>();
    driver.findElement(By.tagName("body")).sendKeys(Keys.TAB);
    for (int stop = 0; stop < 25; stop++) {
      Object shown =
          driver.executeScript(
              "const e = document.activeElement, r = e.getBoundingClientRect();"
                  + "return e === document.body || (r.width > 0 && r.height > 0 && r.right > 0"
                  + " && r.left < innerWidth && getComputedStyle(e).outlineStyle !== 'none');");
      if (!Boolean.TRUE.equals(shown)) {
        unseen.add(focused().getTagName() + " " + focused().getText());
      }
      press(Keys.TAB);
    }
    assertEquals(List.of(), unseen, path + " at " + width);
  }

  @ParameterizedTest
  @CsvSource({
    "/studies?outcome=union&method=bone-transport, 1280",
    "/studies?outcome=union&method=bone-transport, 390",
    "/by-size?outcome=union&method=bone-transport, 1280",
    "/by-size?outcome=union&method=bone-transport, 390",
    "/map?outcome=union&method=bone-transport, 1280",
    "/map?outcome=union&method=bone-transport, 390"
  })
  void aFilterIsTakenOffByItsLink(String path, int width) {
    at(path, width);
    tabTo(
        "the filter",
        element -> element.getText().startsWith("Bone transport in an external frame"));
    press(Keys.ENTER);
    browser.await().until(ExpectedConditions.not(ExpectedConditions.urlContains("bone-transport")));
    assertTrue(browser.driver().getCurrentUrl().contains("outcome=union"));
  }

  @ParameterizedTest
  @ValueSource(ints = {1280, 390})
  void enterInTheBoxSearches(int width) {
    at("/studies", width);
    tabTo("q").sendKeys("bone transport 5-8 cm", Keys.ENTER);
    browser.await().until(ExpectedConditions.urlContains("method=bone-transport"));
    assertTrue(browser.driver().getCurrentUrl().contains("from=5&to=8"));
  }

  @ParameterizedTest
  @ValueSource(ints = {1280, 390})
  void enterInALengthShowsTheResultBySize(int width) {
    at("/by-size?outcome=union", width);
    tabTo("from").sendKeys("5", Keys.ENTER);
    browser.await().until(ExpectedConditions.urlContains("from=5"));
  }

  @ParameterizedTest
  @ValueSource(ints = {1280, 390})
  void theMapIsNarrowedByKeys(int width) {
    at("/map", width);
    if (width < 600) {
      tabTo("the fold", element -> element.getText().startsWith("Narrow down"));
      press(Keys.ENTER);
    }
    tabTo("infected").sendKeys("mixed");
    tabTo("Show", element -> element.getText().equals("Show"));
    press(Keys.ENTER);
    browser.await().until(ExpectedConditions.urlContains("infected="));
  }

  @Test
  void aSpellingIsOfferedWhileTypingAndTakenByKeys() {
    at("/studies", 1280);
    tabTo("q").sendKeys("qarry");
    browser
        .await()
        .until(
            ExpectedConditions.textToBePresentInElementLocated(
                By.id("understood"), "Did you mean quarry"));
    assertFalse(browser.driver().getCurrentUrl().contains("q="), "typing alone changes nothing");
    tabTo("the spelling", element -> element.getText().equals("quarry"));
    press(Keys.ENTER);
    browser.await().until(ExpectedConditions.urlContains("q=quarry"));
    assertEquals(List.of(), browser.complaints());
  }

  @Test
  void aColumnIsChosenByKeysAndTheBoxKeepsTheFocus() {
    at("/studies", 1280);
    tabTo("Columns", element -> element.getText().equals("Columns"));
    press(Keys.ENTER);
    tabTo("column-year");
    press(Keys.SPACE);
    browser.await().until(ExpectedConditions.urlContains("column=year"));
    browser
        .await()
        .until(ExpectedConditions.presenceOfElementLocated(By.cssSelector("td[data-head='Year']")));
    assertEquals("column-year", focused().getDomAttribute("id"));
  }
}
