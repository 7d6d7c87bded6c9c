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
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.support.ui.ExpectedConditions;
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

  private static WebElement find(String css) {
    return BROWSER.await().until(ExpectedConditions.presenceOfElementLocated(By.cssSelector(css)));
  }

  /** Presses what may be put anew by the page's script at that moment. */
  private static void press(String css) {
    BROWSER
        .await()
        .ignoring(StaleElementReferenceException.class)
        .until(
            d -> {
              WebElement button = d.findElement(By.cssSelector(css));
              BROWSER
                  .driver()
                  .executeScript("arguments[0].scrollIntoView({block: 'center'})", button);
              button.click();
              return true;
            });
  }

  /** Waits until a field says so, in whichever state the page is meanwhile. */
  private static void awaitText(String column, String text) {
    BROWSER
        .await()
        .ignoring(StaleElementReferenceException.class)
        .until(d -> text.equals(field(column).getDomProperty("value")));
  }

  /** The field of a column, the first of the page. */
  private static WebElement field(String column) {
    return find("[id^='c-'][id$='-" + column + "']");
  }

  private static void type(String column, String text) {
    field(column).sendKeys(text + Keys.TAB);
    BROWSER
        .await()
        .ignoring(StaleElementReferenceException.class)
        .until(d -> text.equals(field(column).getDomAttribute("data-seen")));
  }

  private static void choose(String column, String code) {
    new Select(field(column)).selectByValue(code);
    BROWSER.driver().findElement(By.tagName("h1")).click();
    BROWSER
        .await()
        .ignoring(StaleElementReferenceException.class)
        .until(d -> code.equals(field(column).getDomAttribute("data-seen")));
  }

  /** Takes the field in hand, then clicks on a word of the paper. */
  private static void read(String column, String word) {
    BROWSER.driver().executeScript("arguments[0].focus()", field(column));
    WebElement place = find(".paper-page .words rect[data-text='" + word + "']");
    BROWSER.driver().executeScript("arguments[0].scrollIntoView({block: 'center'})", place);
    new Actions(BROWSER.driver()).moveToElement(place).click().perform();
  }

  @Test
  void aPaperBecomesARecordWithPlacesAndAPointOfAPlotLeadsBackToItsWords() throws Exception {
    Path paper = InventedPaper.write(folder.resolve("invented.pdf"));
    BROWSER.driver().get(running.address("/desk"));
    find("#study").sendKeys("transport2031" + Keys.ENTER);
    find("#paper").sendKeys(paper.toString());
    press("aside.paper button");
    find(".paper-page .words rect");

    type("title", "Transport of bone over invented gaps");
    type("first_author", "Invented");
    type("year", "2031");
    choose("method", "bone-transport");
    type("patients", "12");
    type("limbs", "12");
    new Select(find("#outcome")).selectByValue("primary-union");
    press("form[action$='/outcome'] button");
    find("section.outcome");
    find(".paper-page .words rect");

    BROWSER.driver().executeScript("arguments[0].focus()", field("events"));
    dragOver("10/12", "(83%)");
    // The percentage has had no field, so that the page comes anew with one.
    find("[id^='c-'][id$='-percent']");
    find(".paper-page .words rect");
    awaitText("events", "10");
    awaitText("total", "12");
    awaitText("percent", "83");
    String told = find("#told").getText();
    assertTrue(!told.contains("cannot be so"), told);

    press(".page-of-paper nav a[data-page='2']");
    press(".tables-of-page a");
    press("form[action$='/table/take'] button");
    find("#patients table");
    assertEquals(
        InventedPaper.PATIENTS,
        BROWSER.driver().findElements(By.cssSelector("#patients tbody tr")).size());

    readTheCurve();
    handIn();
    BROWSER.await().until(ExpectedConditions.urlContains("/studies/"));

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
    press("a[href*='transport2031']");
    press("a[href^='/papers/']");
    WebElement marked = find(".paper-page .marked");
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
  private static void readTheCurve() {
    find(".paper-page .words rect");
    press(".page-of-paper nav a[data-page='2']");
    press(".page-of-paper nav a[data-page='3']");
    press("a[href*='/figure?page=3']");
    press("button[name=propose]");
    find("#figure .caution");
    new Select(find("#outcome")).selectByValue("time-to-union");
    find("#events").sendKeys("10");
    find("#median").sendKeys("9");
    press("#figure .numbers > button[type=submit]");
    find("#rebuilt polyline");
    String made = find("#made").getText();
    assertTrue(made.contains("It has the 10 events that the paper prints."), made);
    assertTrue(made.contains("Its median is 9, and the paper prints 9."), made);
    press("#made button");
    find("#curves li");
  }

  /** The study on the desk again has the curve with its marks, and its figure is found. */
  private static void theCurveStaysWithTheRecord() {
    String study = BROWSER.driver().getCurrentUrl();
    press("form[action$='/mend'] button");
    find("#curves li");
    press("#curves li a[href*='figure?curve=']");
    find("#point-table tbody tr");
    assertEquals(
        InventedFigure.UNITED.size() + 2,
        BROWSER.driver().findElements(By.cssSelector("#point-table tbody tr")).size());
    BROWSER.driver().navigate().back();
    press("#curves li a[href^='/papers/']");
    WebElement marked = find(".paper-page .marked");
    double left = Double.parseDouble(marked.getDomAttribute("x"));
    double wide = Double.parseDouble(marked.getDomAttribute("width"));
    double[] end = InventedFigure.place(24, 0);
    assertTrue(left < InventedFigure.place(0, 0)[0] && left + wide > end[0], "the whole figure");
    BROWSER.driver().get(study);
    find("h1");
  }

  @Test
  void whatIsFoundInTheWholePaperIsLookedAtBeforeAnyOfItIsTaken() throws Exception {
    Path paper = InventedPaper.write(folder.resolve("whole.pdf"));
    BROWSER.driver().get(running.address("/desk"));
    find("#study").sendKeys("whole2031" + Keys.ENTER);
    find("#paper").sendKeys(paper.toString());
    press("aside.paper button");
    press("a[href$='/table?whole=yes']");
    String found = find("main").getText();
    assertTrue(found.contains("What is found in the paper"), found);
    assertTrue(found.contains("6.4 cm from p. 1: “6.4 cm”"), found);
    press("form[action$='/table/take'] button");
    BROWSER
        .await()
        .until(
            d ->
                d.getPageSource().contains("class=\"record\"")
                    || d.getPageSource().contains("On to the draft"));
    List<WebElement> on = BROWSER.driver().findElements(By.linkText("On to the draft"));
    if (!on.isEmpty()) {
      on.get(0).click();
    }
    find("#patients table");
    assertEquals(
        InventedPaper.PATIENTS,
        BROWSER.driver().findElements(By.cssSelector("#patients tbody tr")).size());
  }

  @Test
  void aDraftIsNeverWiderThanItsWindow() {
    BROWSER.driver().get(running.address("/desk"));
    find("#study").sendKeys("narrow2031" + Keys.ENTER);
    new Select(find("#outcome")).selectByValue("time-to-union");
    press("form[action$='/outcome'] button");
    press("form[action$='/group'] button");
    press("form[action$='/patient'] button");
    String draft = BROWSER.driver().getCurrentUrl().replaceFirst("#.*", "");
    try {
      for (int width : new int[] {320, 390, 640, 1280, 1920}) {
        BROWSER.width(width);
        BROWSER.driver().get(draft);
        Number over =
            (Number)
                BROWSER
                    .driver()
                    .executeScript(
                        "return document.documentElement.scrollWidth - window.innerWidth");
        assertTrue(over.intValue() <= 0, "too wide by " + over + " at " + width);
      }
    } finally {
      BROWSER.width(1500);
    }
  }

  private static void dragOver(String first, String last) {
    WebElement from = find(".paper-page .words rect[data-text='" + first + "']");
    WebElement to = find(".paper-page .words rect[data-text='" + last + "']");
    BROWSER.driver().executeScript("arguments[0].scrollIntoView({block: 'center'})", from);
    new Actions(BROWSER.driver())
        .moveToElement(from, -from.getSize().width / 2 - 2, -from.getSize().height / 2 - 2)
        .clickAndHold()
        .moveToElement(to, to.getSize().width / 2 + 2, to.getSize().height / 2 + 2)
        .release()
        .perform();
  }

  private static void handIn() {
    press(".hand-in a.button");
    find("h1");
    while (!BROWSER.driver().findElements(By.cssSelector("form.settle")).isEmpty()) {
      BROWSER
          .driver()
          .findElements(By.cssSelector("form.settle input[type=checkbox]"))
          .forEach(WebElement::click);
      find("#settle-why").sendKeys("as printed");
      find("#settle-who").sendKeys("AB");
      press("form.settle button");
      find("h1");
    }
    find("#why").sendKeys("first reading");
    find("#who").clear();
    find("#who").sendKeys("AB");
    press("form[action$='/hand-in'] button");
  }
}
