package gapwise.server.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.exchange.Export;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.ExpectedConditions;

/** The main job in a real browser. */
class BrowserTest {
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

  @Test
  void aWorkbookIsImportedFilteredPooledAndItsFigureDownloaded() throws Exception {
    Path workbook = folder.resolve("filled.xlsx");
    try (OutputStream file = Files.newOutputStream(workbook)) {
      Export.workbook(Invented.studies(), file);
    }
    try (RunningServer empty = RunningServer.empty(folder.resolve("empty"))) {
      ChromeDriver driver = browser.driver();
      browser.width(1280);
      driver.get(empty.address("/import"));
      driver.findElement(By.id("files")).sendKeys(workbook.toString());
      driver.findElement(By.id("who")).sendKeys("reviewer");
      driver.findElement(By.cssSelector("main form button")).click();
      settled(driver);
      for (WebElement doubt : driver.findElements(By.name("seen"))) {
        doubt.click();
      }
      if (!driver.findElements(By.cssSelector("#state form button")).isEmpty()) {
        driver.findElement(By.cssSelector("#state form button")).click();
        settled(driver);
      }
      assertTrue(
          driver.findElement(By.cssSelector("#state h2")).getText().startsWith("16 studies added"),
          driver.findElement(By.id("state")).getText());

      driver.get(empty.address("/studies?outcome=union"));
      driver.findElement(By.id("from")).sendKeys("5");
      driver.findElement(By.id("to")).sendKeys("8", Keys.ENTER);
      browser.await().until(ExpectedConditions.urlContains("from=5"));
      browser
          .await()
          .until(ExpectedConditions.textToBePresentInElementLocated(By.id("chips"), "5 to 8 cm"));
      browser
          .await()
          .until(
              ExpectedConditions.numberOfElementsToBe(By.cssSelector("form#look.htmx-request"), 0));
      driver.findElement(By.partialLinkText("Pool these")).click();
      browser
          .await()
          .until(ExpectedConditions.visibilityOfElementLocated(By.cssSelector(".wide svg")));
      assertTrue(driver.findElement(By.className("answer")).getText().contains("of 100"));
      driver.findElement(By.id("download-svg")).click();
      Path svg = browser.downloads().resolve("forest.svg");
      browser.await().until(d -> Files.exists(svg));
      String drawing = Files.readString(svg, StandardCharsets.UTF_8);
      assertTrue(drawing.contains("</svg>") && drawing.contains("Invented demonstration data"));
      assertEquals(List.of(), browser.complaints());
    }
  }

  private static void settled(ChromeDriver driver) {
    browser
        .await()
        .until(
            d ->
                !driver.findElements(By.cssSelector("#state h2")).isEmpty()
                    && driver.findElements(By.cssSelector("#state progress")).isEmpty());
  }

  @Test
  void aFilterChosenShowsAtOnceAndStandsInTheAddress() {
    ChromeDriver driver = browser.driver();
    browser.width(1280);
    driver.get(running.address("/studies"));
    driver.findElement(By.id("method-bone-transport")).click();
    browser.await().until(ExpectedConditions.urlContains("method=bone-transport"));
    browser
        .await()
        .until(
            ExpectedConditions.textToBePresentInElementLocated(
                By.id("found-heading"), "8 groups of patients"));
    assertTrue(driver.findElement(By.id("method-bone-transport")).isSelected());
    assertEquals(List.of(), browser.complaints());
  }

  @Test
  void keysAloneLeadFromTheFirstPageToAPooledResult() {
    ChromeDriver driver = browser.driver();
    browser.width(1280);
    driver.get(running.address("/"));
    WebElement body = driver.findElement(By.tagName("body"));
    body.sendKeys(Keys.TAB);
    assertEquals("Skip to content", driver.switchTo().activeElement().getText());
    driver.switchTo().activeElement().sendKeys(Keys.ENTER);
    tabTo(driver, "ask-outcome");
    tabTo(driver, "ask-method");
    driver.switchTo().activeElement().sendKeys("Bone");
    tabTo(driver, "ask-from");
    driver.switchTo().activeElement().sendKeys("5");
    tabTo(driver, "ask-to");
    driver.switchTo().activeElement().sendKeys("8", Keys.ENTER);
    browser.await().until(ExpectedConditions.urlContains("/pooled"));
    String answer =
        browser
            .await()
            .until(ExpectedConditions.visibilityOfElementLocated(By.className("answer")))
            .getText();
    assertTrue(answer.contains("Bone transport") && answer.contains("of 100"), answer);
  }

  @Test
  void keysAlonePlaceACaseWithItsCourse() {
    ChromeDriver driver = browser.driver();
    browser.width(1280);
    driver.get(running.address("/case"));
    tabTo(driver, "method");
    driver.switchTo().activeElement().sendKeys("Bone transport in an");
    tabTo(driver, "length");
    driver.switchTo().activeElement().sendKeys("6");
    tabTo(driver, "union");
    driver.switchTo().activeElement().sendKeys("8");
    tabTo(driver, "union-from");
    driver.switchTo().activeElement().sendKeys("from: def");
    tabTo(driver, "phase-1");
    driver.switchTo().activeElement().sendKeys("in the fr");
    tabTo(driver, "duration-1");
    driver.switchTo().activeElement().sendKeys("9", Keys.ENTER);
    browser.await().until(ExpectedConditions.urlContains("union=8"));
    String answer =
        browser
            .await()
            .until(ExpectedConditions.visibilityOfElementLocated(By.className("answer")))
            .getText();
    assertTrue(answer.contains("new series of bone transport would be expected"), answer);
    assertTrue(driver.findElement(By.id("course")).getText().contains("in the frame"));
    assertEquals(List.of(), browser.complaints());
  }

  @Test
  void keysAlonePutAClaimTogetherAndItsAnalysesComeByThemselves() {
    ChromeDriver driver = browser.driver();
    browser.width(1280);
    driver.get(running.address("/claim"));
    tabTo(driver, "claim-a");
    driver.switchTo().activeElement().sendKeys("Bone transport");
    tabTo(driver, "claim-says");
    tabTo(driver, "claim-outcome");
    driver.switchTo().activeElement().sendKeys("Union, as");
    tabTo(driver, "claim-b");
    driver.switchTo().activeElement().sendKeys("Induced");
    tabTo(driver, "claim-from");
    driver.switchTo().activeElement().sendKeys("4", Keys.ENTER);
    browser.await().until(ExpectedConditions.urlContains("b=induced-membrane"));
    String sentence =
        browser
            .await()
            .until(ExpectedConditions.visibilityOfElementLocated(By.id("talk-sentence")))
            .getText();
    assertTrue(sentence.startsWith("No study here has compared bone transport"), sentence);
    browser
        .await()
        .until(
            ExpectedConditions.textToBePresentInElementLocated(By.id("ways"), "Undecided, of 100"));
    assertEquals(List.of(), browser.complaints());
  }

  private static void tabTo(ChromeDriver driver, String id) {
    for (int presses = 0; presses < 60; presses++) {
      WebElement focused = driver.switchTo().activeElement();
      if (id.equals(focused.getDomAttribute("id"))) {
        return;
      }
      focused.sendKeys(Keys.TAB);
    }
    throw new AssertionError("the Tab key does not reach " + id);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/",
        "/studies?outcome=union&from=5&to=8",
        "/studies?q=nothing+like+this",
        "/studies/invented-03",
        "/pooled",
        "/pooled?outcome=union",
        "/pooled?outcome=refracture",
        "/map",
        "/by-size?outcome=union",
        "/by-size?outcome=union&shape=curve",
        "/map?outcome=union&infected=yes",
        "/map?view=comparisons",
        "/case",
        "/case?method=bone-transport&length=6&bone=tibia&infection=active&union=8"
            + "&union-from=definitive-operation&phase-1=temporary-frame&duration-1=8&unit-1=weeks"
            + "&phase-2=in-frame&duration-2=9&phase-3=unsupported&duration-3=4",
        "/claim",
        "/claim?a=bone-transport&says=more&outcome=union&b=induced-membrane&ways=all",
        "/claim?a=bone-transport&says=more&outcome=union&b=bone-transport",
        "/funnel?outcome=union&method=bone-transport",
        "/funnel?outcome=refracture",
        "/import",
        "/method"
      })
  void noPageHasABarrierOrAComplaintAtADeskOrOnAPhone(String path) throws Exception {
    ChromeDriver driver = browser.driver();
    for (int width : new int[] {1280, 390}) {
      browser.width(width);
      driver.get(running.address(path));
      noBarrier(driver, path + " at " + width);
    }
  }

  /** What stands behind a fold or comes while one types is part of the page too. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "/studies?outcome=union",
        "/pooled?outcome=union",
        "/by-size?outcome=union",
        "/funnel?outcome=union&method=bone-transport",
        "/case?method=bone-transport&length=6&union=8&union-from=definitive-operation",
        "/claim?a=bone-transport&says=more&outcome=union&b=induced-membrane&ways=all"
      })
  void noPageHasABarrierWithEveryFoldOpen(String path) throws Exception {
    ChromeDriver driver = browser.driver();
    for (int width : new int[] {1280, 390}) {
      browser.width(width);
      driver.get(running.address(path));
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
  void whatIsUnderstoodWhileOneTypesHasNoBarrier() throws Exception {
    ChromeDriver driver = browser.driver();
    for (int width : new int[] {1280, 390}) {
      browser.width(width);
      driver.get(running.address("/studies"));
      driver.findElement(By.id("q")).sendKeys("union bone transport 5-8 cm infected");
      browser
          .await()
          .until(
              ExpectedConditions.textToBePresentInElementLocated(
                  By.id("understood"), "missing bone 5 to 8 cm"));
      noBarrier(driver, "words understood at " + width);
    }
  }

  private static void noBarrier(ChromeDriver driver, String state) throws Exception {
    assertEquals(List.of(), barriers(driver), state);
    Number overflow =
        (Number)
            driver.executeScript("return document.documentElement.scrollWidth - window.innerWidth");
    assertTrue(overflow.intValue() <= 0, state + " is too wide");
    assertEquals(List.of(), browser.complaints(), state);
  }

  @Test
  void anErrorPageHasNoBarrier() throws Exception {
    browser.driver().get(running.address("/studies?from=8&to=5"));
    assertEquals(List.of(), barriers(browser.driver()));
    browser.complaints(); // the browser notes the status 422, which is meant
  }

  /**
   * What axe-core finds, by rule, with the first element that breaks it; sizes of targets too (WCAG
   * 2.2, 2.5.8), which axe-core leaves out unless asked.
   */
  private static List<String> barriers(ChromeDriver driver) throws Exception {
    try (InputStream stream = BrowserTest.class.getResourceAsStream("/axe.min.js")) {
      driver.executeScript(new String(stream.readAllBytes(), StandardCharsets.UTF_8));
    }
    List<?> found =
        (List<?>)
            driver.executeAsyncScript(
                "const done = arguments[arguments.length - 1];"
                    + "axe.run({rules: {'target-size': {enabled: true}}}).then(r => done(r.violations.map(v =>"
                    + " ({rule: v.id, where: v.nodes[0].html}))));");
    return found.stream()
        .map(one -> (Map<?, ?>) one)
        .map(one -> one.get("rule") + " at " + one.get("where"))
        .toList();
  }
}
