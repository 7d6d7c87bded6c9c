package gapwise.server.page.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.OwnBrowser;
import gapwise.server.testing.RunningServer;
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
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.support.ui.Select;

/** From an invented paper to a record with the places of its numbers, in a real BROWSER. */
class DeskBrowserTest {
  @TempDir static Path folder;
  private static RunningServer running;
  @RegisterExtension private static final OwnBrowser BROWSER = new OwnBrowser();

  @BeforeAll
  static void open() throws Exception {
    running = RunningServer.withStudies(folder.resolve("home"));
    BROWSER.width(1500);
  }

  @AfterAll
  static void close() {
    running.close();
  }

  /** The field of a column, the first of the page. */
  private static WebElement field(String column) {
    return BROWSER.find(css(column));
  }

  private static String css(String column) {
    return "[id^='c-'][id$='-" + column + "']";
  }

  private static void type(String column, String text) {
    field(column).sendKeys(text + Keys.TAB);
    BROWSER.kept(css(column), text);
  }

  private static void choose(String column, String code) {
    new Select(field(column)).selectByValue(code);
    BROWSER.driver().findElement(By.tagName("h1")).click();
    BROWSER.kept(css(column), code);
  }

  private static void assertText(String column, String text) {
    assertEquals(text, field(column).getDomProperty("value"), column);
  }

  @Test
  void aPaperBecomesARecordWithPlacesAndAPointOfAPlotLeadsBackToItsWords() throws Exception {
    DeskInBrowser desk = new DeskInBrowser(BROWSER, running);
    desk.begin("transport2031", InventedPaper.write(folder.resolve("invented.pdf")));
    desk.awaitPage(1);

    type("title", "Transport of bone over invented gaps");
    type("first_author", "Invented");
    type("year", "2031");
    choose("method", "bone-transport");
    type("patients", "12");
    type("limbs", "12");
    new Select(BROWSER.find("#outcome")).selectByValue("primary-union");
    BROWSER.follow("form[action$='/outcome'] button");
    desk.awaitPage(1);

    BROWSER.driver().executeScript("arguments[0].focus()", field("events"));
    // The percentage has had no field, so that the page comes anew with one.
    BROWSER.leave(() -> dragOver("10/12", "(83%)"));
    assertText("events", "10");
    assertText("total", "12");
    assertText("percent", "83");
    String told = BROWSER.find("#told").getText();
    assertTrue(!told.contains("cannot be so"), told);

    desk.turnTo(2);
    BROWSER.follow(".tables-of-page a");
    BROWSER.follow("form[action$='/table/take'] button");
    assertEquals(
        InventedPaper.PATIENTS,
        BROWSER.driver().findElements(By.cssSelector("#patients tbody tr")).size());

    readTheCurve(desk);
    handIn();
    BROWSER.assertAddress("/studies/");

    assertEquals(
        InventedPaper.PATIENTS,
        BROWSER
            .driver()
            .findElements(By.xpath("//table[caption='Patients described one by one']/tbody/tr"))
            .size());
    assertTrue(
        !BROWSER
            .driver()
            .findElements(
                By.xpath(
                    "//table[caption='Patients described one by one']"
                        + "//a[starts-with(@href, '/papers/') and contains(text(), 'p. 2')]"))
            .isEmpty(),
        "each patient's numbers lead to their page");
    theCurveStaysWithTheRecord();

    // From the plot: the study's row, the place of the number, the marked words.
    BROWSER.driver().get(running.address("/pooled?outcome=primary-union"));
    BROWSER.follow("a[href*='transport2031']");
    BROWSER.follow("a[href^='/papers/']");
    WebElement marked = BROWSER.find(".paper-page .marked");
    List<WebElement> words =
        BROWSER.driver().findElements(By.cssSelector(".paper-page .words rect"));
    WebElement share =
        words.stream()
            .filter(word -> "10/12".equals(word.getDomAttribute("data-text")))
            .findFirst()
            .orElseThrow();
    double left = Double.parseDouble(marked.getDomAttribute("x"));
    double of = Double.parseDouble(share.getDomAttribute("x"));
    assertEquals(of, left + 2, 0.02, "the mark stands 2 points around its words");
    assertEquals(List.of(), BROWSER.complaints());
  }

  /** Takes what the page holds as lines, says what it is of, looks at it, and takes it. */
  private static void readTheCurve(DeskInBrowser desk) {
    desk.figureOfPageThree();
    BROWSER.follow("button[name=propose]");
    BROWSER.find("#figure .caution");
    new Select(BROWSER.find("#outcome")).selectByValue("time-to-union");
    BROWSER.find("#events").sendKeys("10");
    BROWSER.find("#median").sendKeys("9");
    BROWSER.follow("#figure .numbers > button[type=submit]");
    BROWSER.find("#rebuilt polyline");
    String made = BROWSER.find("#made").getText();
    assertTrue(made.contains("It has the 10 events that the paper prints."), made);
    assertTrue(made.contains("Its median is 9, and the paper prints 9."), made);
    BROWSER.follow("#made button");
    BROWSER.find("#curves li");
  }

  /** The study on the desk again has the curve with its marks, and its figure is found. */
  private static void theCurveStaysWithTheRecord() {
    String study = BROWSER.driver().getCurrentUrl();
    BROWSER.follow("form[action$='/mend'] button");
    BROWSER.follow("#curves li a[href*='figure?curve=']");
    assertEquals(
        InventedFigure.UNITED.size() + 2,
        BROWSER.driver().findElements(By.cssSelector("#point-table tbody tr")).size());
    BROWSER.leave(() -> BROWSER.driver().navigate().back());
    BROWSER.follow("#curves li a[href^='/papers/']");
    WebElement marked = BROWSER.find(".paper-page .marked");
    double left = Double.parseDouble(marked.getDomAttribute("x"));
    double wide = Double.parseDouble(marked.getDomAttribute("width"));
    double[] end = InventedFigure.place(24, 0);
    assertTrue(left < InventedFigure.place(0, 0)[0] && left + wide > end[0], "the whole figure");
    BROWSER.driver().get(study);
  }

  @Test
  void whatIsFoundInTheWholePaperIsLookedAtBeforeAnyOfItIsTaken() throws Exception {
    new DeskInBrowser(BROWSER, running)
        .begin("whole2031", InventedPaper.write(folder.resolve("whole.pdf")));
    BROWSER.follow("a[href$='/table?whole=yes']");
    String found = BROWSER.find("main").getText();
    assertTrue(found.contains("What is found in the paper"), found);
    assertTrue(found.contains("6.4 cm from p. 1: “6.4 cm”"), found);
    BROWSER.follow("form[action$='/table/take'] button");
    By on = By.linkText("On to the draft");
    if (!BROWSER.driver().findElements(on).isEmpty()) {
      BROWSER.follow(on);
    }
    assertEquals(
        InventedPaper.PATIENTS,
        BROWSER.driver().findElements(By.cssSelector("#patients tbody tr")).size());
  }

  @Test
  void aDraftIsNeverWiderThanItsWindow() {
    BROWSER.driver().get(running.address("/desk"));
    BROWSER.leave(() -> BROWSER.find("#study").sendKeys("narrow2031" + Keys.ENTER));
    new Select(BROWSER.find("#outcome")).selectByValue("time-to-union");
    BROWSER.follow("form[action$='/outcome'] button");
    BROWSER.follow("form[action$='/group'] button");
    BROWSER.follow("form[action$='/patient'] button");
    String draft = BROWSER.driver().getCurrentUrl().replaceFirst("#.*", "");
    try {
      for (int width : new int[] {320, 390, 640, 1280, 1920}) {
        BROWSER.width(width);
        BROWSER.driver().get(draft);
        int over = BROWSER.tooWide();
        assertTrue(over <= 0, "too wide by " + over + " at " + width);
      }
    } finally {
      BROWSER.width(1500);
    }
  }

  private static void dragOver(String first, String last) {
    WebElement from = BROWSER.find(".paper-page .words rect[data-text='" + first + "']");
    WebElement to = BROWSER.find(".paper-page .words rect[data-text='" + last + "']");
    BROWSER.driver().executeScript("arguments[0].scrollIntoView({block: 'center'})", from);
    new Actions(BROWSER.driver())
        .moveToElement(from, -from.getSize().width / 2 - 2, -from.getSize().height / 2 - 2)
        .clickAndHold()
        .moveToElement(to, to.getSize().width / 2 + 2, to.getSize().height / 2 + 2)
        .release()
        .perform();
  }

  /** Settles all doubts, as often as the page asks, and hands in. */
  private static void handIn() {
    BROWSER.follow(".hand-in a.button");
    while (!BROWSER.driver().findElements(By.cssSelector("form.settle")).isEmpty()) {
      BROWSER
          .driver()
          .findElements(By.cssSelector("form.settle input[type=checkbox]"))
          .forEach(WebElement::click);
      BROWSER.find("#settle-why").sendKeys("as printed");
      BROWSER.find("#settle-who").clear();
      BROWSER.find("#settle-who").sendKeys("AB");
      BROWSER.follow("form.settle button");
    }
    BROWSER.find("#why").sendKeys("first reading");
    BROWSER.find("#who").clear();
    BROWSER.find("#who").sendKeys("AB");
    BROWSER.follow("form[action$='/hand-in'] button");
  }
}
