package gapwise.server.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.OwnBrowser;
import gapwise.server.testing.SharedServer;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
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

/** The frame of every page in a real browser: ways from page to page, at a desk and on a phone. */
class FrameTest {
  private static final int DOORS = 6;
  private static final int PHONE_HEIGHT = 844;
  private static final int MOST_TABS = 12;
  private static final int MOST_BYTES = 150_000;
  private static final String ASKED =
      "outcome=primary-union&method=bone-transport&method=induced-membrane&bone=tibia&from=4&to=8"
          + "&follow-up-from=12";
  private static final List<String> LABELS =
      List.of("tibia", "missing bone 4 to 8 cm", "followed at least 12 months on average");

  @RegisterExtension private static final SharedServer SERVER = SharedServer.withDemonstration();

  @RegisterExtension private static final OwnBrowser BROWSER = new OwnBrowser();

  private static ChromeDriver at(String path, int width) {
    return BROWSER.at(SERVER.address(path), width);
  }

  private static Number number(String script) {
    return (Number) BROWSER.driver().executeScript("return " + script);
  }

  private static List<String> chips() {
    return BROWSER.driver().findElements(By.cssSelector(".chips a")).stream()
        .map(
            chip ->
                chip.getText().replaceAll("[\\s×]+", " ").replaceAll(" ?, take off", "").strip())
        .toList();
  }

  @ParameterizedTest
  @ValueSource(strings = {"/", "/studies", "/pooled?outcome=union", "/map", "/case", "/method"})
  void aDeskHasSixDoorsOnOneLine(String path) {
    ChromeDriver driver = at(path, 1280);
    List<WebElement> doors = driver.findElements(By.cssSelector(".doors a"));
    assertEquals(DOORS, doors.size());
    assertEquals(1, doors.stream().map(door -> door.getLocation().getY()).distinct().count());
    long here = doors.stream().filter(door -> door.getDomAttribute("aria-current") != null).count();
    assertEquals(path.equals("/") ? 0 : 1, here, path);
  }

  @Test
  void aQuestionOnceAskedGoesAlongThroughEveryDoorAndCanBeTakenOffThere() {
    ChromeDriver driver = at("/pooled?" + ASKED, 1280);
    List<String> ways =
        List.of(
            "By size",
            "Small against large",
            "Studies",
            "Gaps",
            "Comparisons",
            "Case and claim",
            "Compare",
            "Pooled");
    List<String> reached = new ArrayList<>();
    for (String way : ways) {
      BROWSER.follow(By.linkText(way));
      if (way.equals("Compare")) {
        BROWSER.find(".options");
      }
      boolean map = way.equals("Gaps") || way.equals("Comparisons");
      for (String label : LABELS) {
        boolean ownAxis = map && label.startsWith("missing bone");
        assertEquals(!ownAxis, chips().contains(label), way + " lacks " + label + ": " + chips());
      }
      reached.add(driver.getCurrentUrl().replaceAll("https?://[^/]*", "").replaceAll("\\?.*", ""));
    }
    assertEquals(
        List.of("/by-size", "/funnel", "/studies", "/map", "/map", "/claim", "/compare", "/pooled"),
        reached);
    assertTrue(driver.getCurrentUrl().contains("method=bone-transport&method=induced-membrane"));
    BROWSER.follow(By.partialLinkText("tibia"));
    assertFalse(chips().contains("tibia"), chips().toString());
    assertFalse(driver.findElement(By.linkText("By size")).getDomAttribute("href").contains("tib"));
  }

  @Test
  void whatNarrowsAResultAloneIsKeptOnTheListAndSaidToBe() {
    ChromeDriver driver =
        at("/pooled?outcome=union&definition=bridging-on-radiographs&least=3", 1280);
    BROWSER.follow(By.linkText("Studies"));
    String kept = "fewest patients in a group: 3, in results only";
    assertTrue(chips().contains(kept), chips().toString());
    driver.findElement(By.id("bone-tibia")).click();
    BROWSER.await().until(ExpectedConditions.urlContains("bone=tibia"));
    BROWSER.settled();
    assertTrue(driver.getCurrentUrl().contains("least=3"), driver.getCurrentUrl());
    assertTrue(chips().contains(kept), chips().toString());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/pooled?outcome=union&method=bone-transport",
        "/by-size?outcome=union&method=bone-transport",
        "/funnel?outcome=union&method=bone-transport",
        "/map?outcome=union",
        "/claim?a=bone-transport&says=more&outcome=primary-union&b=induced-membrane"
      })
  void aPhoneShowsTheAnswerWithoutScrolling(String path) {
    ChromeDriver driver = at(path, 390);
    WebElement answer = driver.findElement(By.cssSelector(".answer p"));
    int bottom = answer.getLocation().getY() + answer.getSize().getHeight();
    assertTrue(bottom <= PHONE_HEIGHT, path + ": the first sentence ends at " + bottom);
    int header = driver.findElement(By.tagName("header")).getSize().getHeight();
    assertTrue(header <= 120, path + ": the header has " + header + " pixels");
    assertTrue(driver.findElement(By.className("top")).getSize().getHeight() <= 60);
  }

  @Test
  void theMenuOfAPhoneOpensByKeysAndEscapeClosesIt() {
    ChromeDriver driver = at("/pooled?outcome=union", 390);
    assertFalse(driver.findElement(By.className("doors")).isDisplayed());
    driver.findElement(By.tagName("body")).sendKeys(Keys.TAB, Keys.TAB, Keys.TAB);
    assertEquals("Menu", BROWSER.focused().getText());
    BROWSER.focused().sendKeys(Keys.ENTER);
    assertTrue(driver.findElement(By.className("doors")).isDisplayed());
    BROWSER.focused().sendKeys(Keys.TAB);
    assertEquals("Compare", BROWSER.focused().getText());
    BROWSER.focused().sendKeys(Keys.ESCAPE);
    assertFalse(driver.findElement(By.className("doors")).isDisplayed());
    assertEquals("Menu", BROWSER.focused().getText());
    assertEquals(List.of(), BROWSER.complaints());
  }

  /**
   * Pages of one door would take a line or two of their own; a phone names the one that is open.
   */
  @Test
  void pagesBehindADoorFoldUnderTheOneThatIsOpen() {
    ChromeDriver driver = at("/references", 390);
    WebElement fold = driver.findElement(By.cssSelector(".pages summary"));
    assertTrue(fold.getText().endsWith("References"), fold.getText());
    assertFalse(driver.findElement(By.className("within")).isDisplayed());
    fold.sendKeys(Keys.ENTER);
    assertEquals(
        8,
        driver.findElements(By.cssSelector(".within a")).stream()
            .filter(WebElement::isDisplayed)
            .count());
    BROWSER.focused().sendKeys(Keys.ESCAPE);
    assertFalse(driver.findElement(By.className("within")).isDisplayed());
    driver = at("/references", 1280);
    assertFalse(driver.findElement(By.className("pages")).isDisplayed());
    assertTrue(driver.findElement(By.className("within")).isDisplayed());
  }

  @Test
  void theMenuOpensWithoutScripts() {
    BROWSER.scripts(false);
    try {
      ChromeDriver driver = at("/method", 390);
      assertFalse(driver.findElement(By.className("doors")).isDisplayed());
      driver.findElement(By.cssSelector(".menu summary")).click();
      assertTrue(driver.findElement(By.linkText("Studies")).isDisplayed());
    } finally {
      BROWSER.scripts(true);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "/studies?outcome=union, 1280, #results td a",
    "/studies?outcome=union, 390, #results td a",
    "/pooled?outcome=union, 1280, .methods th a",
    "/map?outcome=union, 1280, .map td a",
    "/map?outcome=union, 390, .map td a"
  })
  void theFirstResultIsReachedWithinTwelveTabs(String path, int width, String result) {
    ChromeDriver driver = at(path, width);
    driver.findElement(By.tagName("body")).sendKeys(Keys.TAB);
    assertEquals("Skip to the first result", BROWSER.focused().getText());
    BROWSER.focused().sendKeys(Keys.ENTER);
    for (int tabs = 2; tabs <= MOST_TABS; tabs++) {
      BROWSER.focused().sendKeys(Keys.TAB);
      if (Boolean.TRUE.equals(
          driver.executeScript("return document.activeElement.matches(arguments[0])", result))) {
        return;
      }
    }
    throw new AssertionError(path + ": no result within " + MOST_TABS + " tabs at " + width);
  }

  @Test
  void aListOfChoicesActsWhenItIsLeftAndNotAtEachArrowKey() {
    ChromeDriver driver = at("/studies", 1280);
    WebElement order = driver.findElement(By.id("order"));
    order.sendKeys(Keys.ARROW_DOWN);
    order.sendKeys(Keys.ARROW_DOWN);
    String chosen = order.getDomProperty("value");
    assertFalse(driver.getCurrentUrl().contains("order="), driver.getCurrentUrl());
    order.sendKeys(Keys.TAB);
    BROWSER.await().until(ExpectedConditions.urlContains("order=" + chosen));
    assertEquals(List.of(), BROWSER.complaints());
  }

  /** A window of 1280 pixels at 200 % has room for 640. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "/",
        "/studies?outcome=union",
        "/studies/invented-03",
        "/pooled?outcome=union",
        "/by-size?outcome=union",
        "/funnel?outcome=union&method=bone-transport",
        "/over-time?outcome=time-to-union",
        "/map",
        "/map?view=comparisons",
        "/case",
        "/claim?a=bone-transport&says=more&outcome=primary-union&b=induced-membrane",
        "/desk",
        "/overlaps",
        "/references",
        "/references/kept",
        "/screening",
        "/review",
        "/review/edit",
        "/kept",
        "/extraction",
        "/import",
        "/method"
      })
  void noPageIsWiderThanAWindowAtTwiceTheSize(String path) {
    at(path, 640);
    int over = BROWSER.tooWide();
    assertTrue(over <= 0, path + " is too wide by " + over);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/",
        "/studies",
        "/studies/invented-03",
        "/pooled?outcome=primary-union",
        "/by-size?outcome=primary-union",
        "/funnel?outcome=primary-union",
        "/map",
        "/map?view=comparisons",
        "/case",
        "/claim?a=bone-transport&says=more&outcome=primary-union&b=induced-membrane",
        "/import",
        "/method"
      })
  void aPageIsLightAndAsksNobodyElseForAnything(String path) {
    ChromeDriver driver = BROWSER.driver();
    driver.executeCdpCommand("Network.clearBrowserCache", Map.of());
    at(path, 1280);
    int bytes =
        number(
                "performance.getEntries().filter(e => e.transferSize)"
                    + ".reduce((sum, e) => sum + e.transferSize, 0)")
            .intValue();
    assertTrue(bytes > 10_000 && bytes <= MOST_BYTES, path + " takes " + bytes + " bytes");
    List<?> elsewhere =
        (List<?>)
            driver.executeScript(
                "return performance.getEntriesByType('resource').map(e => e.name)"
                    + ".filter(name => !name.startsWith(location.origin))");
    assertEquals(List.of(), elsewhere);
  }

  /**
   * What is done: typing, Enter, the first outcome, and a click for each slide until both are
   * taken.
   */
  @Test
  void aSurgeonTypesAQuestionAndTakesASlideOfBothMethodsInFiveActions() throws Exception {
    ChromeDriver driver = at("/", 1280);
    WebElement box = driver.findElement(By.id("ask-q"));
    box.sendKeys("8 cm infected tibia, transport or membrane");
    BROWSER.leave(() -> box.sendKeys(Keys.ENTER));
    int actions = 2;
    BROWSER.assertAddress("/compare");
    BROWSER.follow(".options thead a");
    actions++;
    BROWSER.assertAddress("/pooled");
    String answer = driver.findElement(By.className("answer")).getText();
    assertTrue(answer.contains("Bone transport") && answer.contains("Induced membrane"), answer);
    StringBuilder taken = new StringBuilder();
    for (WebElement slide :
        driver.findElements(By.cssSelector(".take-files a[href*='for=slide']"))) {
      String href = slide.getDomAttribute("href");
      if (href.contains(".svg") && !holdsBoth(taken)) {
        slide.click();
        actions++;
        taken.append(SERVER.get(href).body().replaceAll("(?s)<metadata.*?</metadata>", ""));
      }
    }
    assertTrue(holdsBoth(taken), "both methods are on the slides");
    assertTrue(actions <= 5, actions + " actions");
    BROWSER.downloaded("forest-slide.svg");
  }

  private static boolean holdsBoth(CharSequence slides) {
    return slides.toString().contains(">Bone transport in an external frame<")
        && slides.toString().contains(">Induced membrane, two stages<");
  }

  @Test
  void everyExampleOfTheFirstPageHasAnAnswer() {
    ChromeDriver driver = at("/", 1280);
    List<String> examples =
        driver.findElements(By.cssSelector(".examples a")).stream()
            .map(example -> example.getDomAttribute("href"))
            .toList();
    assertEquals(3, examples.size());
    for (String example : examples) {
      at(example, 1280);
      boolean options = driver.getCurrentUrl().contains("/compare?");
      assertTrue(options || driver.getCurrentUrl().contains("/pooled?"), driver.getCurrentUrl());
      By answered = options ? By.className("options") : By.className("answer");
      String answer =
          BROWSER.await().until(ExpectedConditions.visibilityOfElementLocated(answered)).getText();
      assertTrue(answer.contains("of 100"), example + ": " + answer);
    }
  }

  @Test
  void darkFollowsTheSystemAndPaperIsLight() {
    ChromeDriver driver = BROWSER.driver();
    String ground = "getComputedStyle(document.body).backgroundColor";
    for (String media : List.of("screen", "print")) {
      driver.executeCdpCommand(
          "Emulation.setEmulatedMedia",
          Map.of(
              "media",
              media,
              "features",
              List.of(Map.of("name", "prefers-color-scheme", "value", "dark"))));
      at("/pooled?outcome=union", 1280);
      assertEquals(
          media.equals("screen") ? "rgb(21, 25, 30)" : "rgb(255, 255, 255)",
          driver.executeScript("return " + ground));
      assertEquals(
          media.equals("screen") ? "rgb(251, 250, 247)" : "rgb(255, 255, 255)",
          driver.executeScript(
              "return getComputedStyle(document.querySelector('.figure')).backgroundColor"));
    }
    driver.executeCdpCommand(
        "Emulation.setEmulatedMedia", Map.of("media", "", "features", List.of()));
  }
}
