package gapwise.server.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.exchange.Export;
import gapwise.server.testing.Invented;
import gapwise.server.testing.OwnBrowser;
import gapwise.server.testing.RunningServer;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.ExpectedConditions;

/** The main job in a real BROWSER. */
class BrowserTest {
  @TempDir static Path folder;
  private static RunningServer running;
  @RegisterExtension private static final OwnBrowser BROWSER = new OwnBrowser();

  @BeforeAll
  static void open() throws Exception {
    running = RunningServer.withStudies(folder.resolve("home"));
  }

  @AfterAll
  static void close() {
    running.close();
  }

  @Test
  void aWorkbookIsImportedFilteredPooledAndItsFigureDownloaded() throws Exception {
    Path workbook = folder.resolve("filled.xlsx");
    try (OutputStream file = Files.newOutputStream(workbook)) {
      Export.workbook(Invented.studies(), file);
    }
    try (RunningServer empty = RunningServer.empty(folder.resolve("empty"))) {
      ChromeDriver driver = BROWSER.at(empty.address("/import"), 1280);
      driver.findElement(By.id("files")).sendKeys(workbook.toString());
      driver.findElement(By.id("who")).sendKeys("reviewer");
      BROWSER.follow("main form button");
      settled(driver);
      driver.findElements(By.name("kind")).forEach(WebElement::click);
      driver.findElements(By.name("seen")).stream()
          .filter(WebElement::isDisplayed)
          .filter(doubt -> !doubt.isSelected())
          .forEach(WebElement::click);
      String confirm = "#state form button";
      if (!driver.findElements(By.cssSelector(confirm)).isEmpty()) {
        BROWSER.follow(confirm);
        settled(driver);
      }
      assertTrue(
          driver.findElement(By.cssSelector("#state h2")).getText().startsWith("16 studies added"),
          driver.findElement(By.id("state")).getText());

      BROWSER.at(empty.address("/studies?outcome=union"), 1280);
      driver.findElement(By.id("from")).sendKeys("5");
      driver.findElement(By.id("to")).sendKeys("8", Keys.ENTER);
      BROWSER.await().until(ExpectedConditions.urlContains("from=5"));
      BROWSER
          .await()
          .until(ExpectedConditions.textToBePresentInElementLocated(By.id("chips"), "5 to 8 cm"));
      BROWSER.settled();
      BROWSER.follow(By.partialLinkText("Pool these"));
      BROWSER
          .await()
          .until(ExpectedConditions.visibilityOfElementLocated(By.cssSelector(".wide svg")));
      assertTrue(driver.findElement(By.className("answer")).getText().contains("of 100"));
      driver.findElement(By.id("download-svg")).click();
      String drawing = Files.readString(BROWSER.downloaded("forest.svg"), StandardCharsets.UTF_8);
      assertTrue(drawing.contains("</svg>") && drawing.contains("Invented demonstration data"));
      assertEquals(List.of(), BROWSER.complaints());
    }
  }

  private static void settled(ChromeDriver driver) {
    BROWSER
        .await()
        .until(
            d ->
                !driver.findElements(By.cssSelector("#state h2")).isEmpty()
                    && driver.findElements(By.cssSelector("#state progress")).isEmpty());
  }

  @Test
  void aFilterChosenShowsAtOnceAndStandsInTheAddress() {
    ChromeDriver driver = BROWSER.at(running.address("/studies"), 1280);
    driver.findElement(By.id("method-bone-transport")).click();
    BROWSER.await().until(ExpectedConditions.urlContains("method=bone-transport"));
    BROWSER
        .await()
        .until(
            ExpectedConditions.textToBePresentInElementLocated(
                By.id("found-heading"), "8 groups of patients"));
    BROWSER.settled();
    assertTrue(driver.findElement(By.id("method-bone-transport")).isSelected());
    assertEquals(List.of(), BROWSER.complaints());
  }

  @Test
  void keysAloneLeadFromTheFirstPageToAPooledResult() {
    ChromeDriver driver = BROWSER.at(running.address("/"), 1280);
    WebElement body = driver.findElement(By.tagName("body"));
    body.sendKeys(Keys.TAB);
    assertEquals("Skip to content", driver.switchTo().activeElement().getText());
    driver.switchTo().activeElement().sendKeys(Keys.ENTER);
    tabTo(driver, "ask-q");
    enter("union after bone transport, 5 to 8 cm", "/pooled");
    String answer =
        BROWSER
            .await()
            .until(ExpectedConditions.visibilityOfElementLocated(By.className("answer")))
            .getText();
    assertTrue(answer.contains("Bone transport") && answer.contains("of 100"), answer);
  }

  @Test
  void keysAlonePlaceACaseWithItsCourse() {
    ChromeDriver driver = BROWSER.at(running.address("/case"), 1280);
    tabTo(driver, "method");
    driver.switchTo().activeElement().sendKeys("Bone transport in an");
    tabTo(driver, "length");
    enter("6", "step=course");
    tabTo(driver, "union");
    driver.switchTo().activeElement().sendKeys("8");
    tabTo(driver, "union-from");
    driver.switchTo().activeElement().sendKeys("from: def");
    tabTo(driver, "duration-1");
    enter("9", "union=8");
    String answer =
        BROWSER
            .await()
            .until(ExpectedConditions.visibilityOfElementLocated(By.className("answer")))
            .getText();
    assertTrue(answer.contains("new series of bone transport would be expected"), answer);
    assertTrue(driver.findElement(By.id("course")).getText().contains("in the frame"));
    assertEquals(List.of(), BROWSER.complaints());
  }

  @Test
  void keysAlonePutAClaimTogetherAndItsAnalysesComeByThemselves() {
    ChromeDriver driver = BROWSER.at(running.address("/claim"), 1280);
    tabTo(driver, "claim-a");
    driver.switchTo().activeElement().sendKeys("Bone transport");
    tabTo(driver, "claim-says");
    tabTo(driver, "claim-outcome");
    driver.switchTo().activeElement().sendKeys("Union, as");
    tabTo(driver, "claim-b");
    driver.switchTo().activeElement().sendKeys("Induced");
    tabTo(driver, "claim-from");
    enter("4", "b=induced-membrane");
    String sentence =
        BROWSER
            .await()
            .until(ExpectedConditions.visibilityOfElementLocated(By.id("talk-sentence")))
            .getText();
    assertTrue(sentence.startsWith("No study here has compared bone transport"), sentence);
    BROWSER
        .await()
        .until(
            ExpectedConditions.textToBePresentInElementLocated(By.id("ways"), "Undecided, of 100"));
    assertEquals(List.of(), BROWSER.complaints());
  }

  /** Enters the last words of a form, which leads to an address with a part. */
  private static void enter(String words, String part) {
    BROWSER.leave(() -> BROWSER.press(words, Keys.ENTER));
    BROWSER.assertAddress(part);
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
}
