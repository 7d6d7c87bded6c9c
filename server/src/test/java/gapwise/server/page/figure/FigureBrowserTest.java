package gapwise.server.page.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.page.desk.DeskInBrowser;
import gapwise.server.page.desk.InventedFigure;
import gapwise.server.page.desk.InventedPaper;
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

/** An invented figure on a page of a PDF, read off in a real browser by its axes and points. */
class FigureBrowserTest {
  private static final double PIXEL = 0.3;

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

  /** Clicks on the picture where a time and a percentage lie. */
  private static void click(double month, double percent) {
    double[] place = InventedFigure.place(month, percent);
    List<?> at =
        (List<?>)
            BROWSER
                .driver()
                .executeScript(
                    "const svg = document.getElementById('picture'), view = svg.parentElement;"
                        + "view.scrollIntoView({block: 'center'});"
                        + "const scale = svg.clientWidth / svg.viewBox.baseVal.width;"
                        + "view.scrollTop = arguments[1] * scale - view.clientHeight / 2;"
                        + "view.scrollLeft = arguments[0] * scale - view.clientWidth / 2;"
                        + "const p = new DOMPoint(arguments[0], arguments[1])"
                        + ".matrixTransform(svg.getScreenCTM()); return [p.x, p.y];",
                    place[0],
                    place[1]);
    int x = (int) Math.round(((Number) at.get(0)).doubleValue());
    int y = (int) Math.round(((Number) at.get(1)).doubleValue());
    new Actions(BROWSER.driver()).moveToLocation(x, y).click().perform();
  }

  private static void mark(String name, double month, double percent, String value) {
    BROWSER.pressOn("input[name=hand][value=" + name + "]");
    click(month, percent);
    awaitFocus(name + "-value");
    BROWSER.press(value);
  }

  private static List<WebElement> rows() {
    return BROWSER.driver().findElements(By.cssSelector("#point-table tbody tr"));
  }

  private static void awaitRows(int count) {
    BROWSER.await().withMessage(() -> rows().size() + " points").until(d -> rows().size() == count);
  }

  /** The number at a mark is typed next, so that its field has the focus. */
  private static void awaitFocus(String id) {
    BROWSER.await().until(d -> id.equals(BROWSER.focused().getDomAttribute("id")));
  }

  private static double number(int row, int column) {
    WebElement field = rows().get(row).findElements(By.tagName("input")).get(column);
    return Double.parseDouble(field.getDomProperty("value"));
  }

  private static String figure(String study) throws Exception {
    DeskInBrowser desk = new DeskInBrowser(BROWSER, running);
    desk.begin(study, InventedPaper.write(folder.resolve(study + ".pdf")));
    String draft = BROWSER.driver().getCurrentUrl().replaceFirst("#.*", "");
    desk.figureOfPageThree();
    return draft;
  }

  @Test
  void axesAndPointsSetByHandBecomeACurveOfTheDraft() throws Exception {
    String draft = figure("byhand2031");
    mark("x1", 0, 0, "0");
    mark("x2", 24, 0, "24");
    mark("y1", 0, 0, "0");
    mark("y2", 0, 100, "100");
    BROWSER.pressOn("input[name=hand][value=point]");
    click(0, 0);
    for (int at = 0; at < InventedFigure.UNITED.size(); at++) {
      click(InventedFigure.UNITED.get(at), 100.0 * (at + 1) / InventedPaper.PATIENTS);
    }
    click(24, 1000.0 / InventedPaper.PATIENTS);
    awaitRows(InventedFigure.UNITED.size() + 2);
    assertEquals(9, number(6, 0), PIXEL);
    assertEquals(50, number(6, 1), 1);

    // A slip, undone; a point nudged with the keys of its field.
    click(20, 20);
    awaitRows(InventedFigure.UNITED.size() + 3);
    BROWSER.pressOn("#undo");
    awaitRows(InventedFigure.UNITED.size() + 2);
    double before = number(3, 0);
    WebElement field = rows().get(3).findElements(By.tagName("input")).get(0);
    field.sendKeys(Keys.ARROW_UP);
    assertEquals(before + 0.5 / 12.5, number(3, 0), 0.001, "half a point of 12.5 a month");
    field.sendKeys(Keys.ARROW_DOWN);

    new Select(BROWSER.find("#outcome")).selectByValue("time-to-union");
    new Select(BROWSER.find("#unit")).selectByValue("months");
    new Select(BROWSER.find("#shows")).selectByValue("with-event");
    BROWSER.find("#patients").sendKeys("12");
    BROWSER.find("#events").sendKeys("10");
    BROWSER.find("#median").sendKeys("9");
    BROWSER.find("#risk").sendKeys("0 12\n6 11\n12 4\n18 2");
    BROWSER.follow("#figure .numbers > button[type=submit]");
    BROWSER.find("#rebuilt polyline");
    String made = BROWSER.find("#made").getText();
    assertTrue(made.contains("It has the 10 events that the paper prints."), made);
    assertTrue(made.contains(", and the paper prints 9."), made);

    // What is changed after the look is looked at again before it is taken.
    BROWSER.find("#place").sendKeys("Figure 1" + Keys.TAB);
    BROWSER.awaitWords("Look at what it makes again.");
    BROWSER.follow("#figure .numbers > button[type=submit]");
    BROWSER.find("#rebuilt polyline");
    BROWSER.follow("#made button");
    WebElement curve = BROWSER.find("#curves li");
    assertTrue(curve.getText().contains("Time to union"), curve.getText());
    assertTrue(BROWSER.driver().getCurrentUrl().startsWith(draft));

    BROWSER.follow("#curves li a[href*='figure?curve=']");
    assertEquals(InventedFigure.UNITED.size() + 2, rows().size(), "the marks stand there again");
    assertEquals(List.of(), BROWSER.complaints());
  }

  @Test
  void everythingCanBeSetWithTheKeysAlone() throws Exception {
    figure("bykeys2031");
    WebElement picture = BROWSER.find("#picture");
    picture.sendKeys(Keys.ARROW_RIGHT, Keys.ENTER);
    awaitFocus("x1-value");
    double[] origin = InventedFigure.place(0, 0);
    double[] far = InventedFigure.place(24, 0);
    double[] top = InventedFigure.place(0, 100);
    type("#x1-at", origin[0] + " " + origin[1]);
    type("#x1-value", "0");
    type("#x2-at", far[0] + " " + far[1]);
    type("#x2-value", "24");
    type("#y1-at", origin[0] + " " + origin[1]);
    type("#y1-value", "0");
    type("#y2-at", top[0] + " " + top[1]);
    type("#y2-value", "100");
    BROWSER.find("#as-text summary").sendKeys(Keys.ENTER);
    type("#points", "0 0\n9 50\n24 83.3");
    awaitRows(3);
    assertEquals(3, BROWSER.driver().findElements(By.cssSelector("#marked circle")).size());
    rows().get(1).findElement(By.tagName("button")).sendKeys(Keys.ENTER);
    awaitRows(2);
    BROWSER.find("input[name=hand][value=point]").sendKeys(Keys.SPACE);
    picture = BROWSER.find("#picture");
    picture.sendKeys(Keys.ARROW_LEFT, Keys.ARROW_DOWN, Keys.ENTER);
    awaitRows(3);
    picture.sendKeys(Keys.BACK_SPACE);
    awaitRows(2);
    assertEquals(List.of(), BROWSER.complaints());
  }

  private static void type(String css, String text) {
    WebElement field = BROWSER.find(css);
    field.clear();
    field.sendKeys(text + Keys.TAB);
  }
}
