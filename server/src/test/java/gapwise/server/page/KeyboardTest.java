package gapwise.server.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import gapwise.server.testing.OwnBrowser;
import gapwise.server.testing.SharedServer;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
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
  @RegisterExtension private static final SharedServer SERVER = SharedServer.withStudies();

  @RegisterExtension private static final OwnBrowser BROWSER = new OwnBrowser();

  private static ChromeDriver at(String path, int width) {
    return BROWSER.at(SERVER.address(path), width);
  }

  /** Presses Tab until something is reached. */
  private static WebElement tabTo(String what, Predicate<WebElement> reached) {
    for (int presses = 0; presses < 90; presses++) {
      if (reached.test(BROWSER.focused())) {
        return BROWSER.focused();
      }
      BROWSER.press(Keys.TAB);
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
    assertEquals("Skip to the first result", BROWSER.focused().getText());
    BROWSER.press(Keys.ENTER);
    BROWSER.press(Keys.TAB);
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
        unseen.add(BROWSER.focused().getTagName() + " " + BROWSER.focused().getText());
      }
      BROWSER.press(Keys.TAB);
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
    BROWSER.leave(() -> BROWSER.press(Keys.ENTER));
    BROWSER.assertAddress("outcome=union");
    assertFalse(BROWSER.driver().getCurrentUrl().contains("bone-transport"));
  }

  @ParameterizedTest
  @ValueSource(ints = {1280, 390})
  void enterInTheBoxSearches(int width) {
    at("/studies", width);
    tabTo("q").sendKeys("bone transport 5-8 cm", Keys.ENTER);
    BROWSER.await().until(ExpectedConditions.urlContains("method=bone-transport"));
    BROWSER.assertAddress("from=5&to=8");
  }

  @ParameterizedTest
  @ValueSource(ints = {1280, 390})
  void enterInALengthShowsTheResultBySize(int width) {
    at("/by-size?outcome=union", width);
    BROWSER.leave(() -> tabTo("from").sendKeys("5", Keys.ENTER));
    BROWSER.assertAddress("from=5");
  }

  @ParameterizedTest
  @ValueSource(ints = {1280, 390})
  void theMapIsNarrowedByKeys(int width) {
    at("/map", width);
    if (width < 600) {
      tabTo("the fold", element -> element.getText().startsWith("Narrow down"));
      BROWSER.press(Keys.ENTER);
    }
    tabTo("infected").sendKeys("mixed");
    tabTo("Show", element -> element.getText().equals("Show"));
    BROWSER.leave(() -> BROWSER.press(Keys.ENTER));
    BROWSER.assertAddress("infected=");
  }

  @Test
  void aSpellingIsOfferedWhileTypingAndTakenByKeys() {
    at("/studies", 1280);
    tabTo("q").sendKeys("qarry");
    // Who types slowly is answered for the first letters before; that answer would be replaced.
    BROWSER.fetched("q=qarry");
    BROWSER
        .await()
        .until(
            ExpectedConditions.textToBePresentInElementLocated(
                By.id("understood"), "Did you mean quarry"));
    assertFalse(BROWSER.driver().getCurrentUrl().contains("q="), "typing alone changes nothing");
    tabTo("the spelling", element -> element.getText().equals("quarry"));
    BROWSER.leave(() -> BROWSER.press(Keys.ENTER));
    BROWSER.assertAddress("q=quarry");
    assertEquals(List.of(), BROWSER.complaints());
  }

  @Test
  void aColumnIsChosenByKeysAndTheBoxKeepsTheFocus() {
    at("/studies", 1280);
    tabTo("Columns", element -> element.getText().equals("Columns"));
    BROWSER.press(Keys.ENTER);
    tabTo("column-year");
    BROWSER.press(Keys.SPACE);
    BROWSER.await().until(ExpectedConditions.urlContains("column=year"));
    BROWSER
        .await()
        .until(ExpectedConditions.presenceOfElementLocated(By.cssSelector("td[data-head='Year']")));
    BROWSER.settled();
    assertEquals("column-year", BROWSER.focused().getDomAttribute("id"));
  }
}
