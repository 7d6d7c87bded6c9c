package gapwise.server.page.desk;

import gapwise.server.testing.OwnBrowser;
import gapwise.server.testing.RunningServer;
import java.nio.file.Path;
import org.openqa.selenium.Keys;

/**
 * The desk with {@link InventedPaper} beside it, in a real browser.
 *
 * @param browser the browser
 * @param running the server of the desk
 */
public record DeskInBrowser(OwnBrowser browser, RunningServer running) {
  /** Begins a study with a paper beside it; the draft is open then. */
  public void begin(String study, Path paper) {
    browser.driver().get(running.address("/desk"));
    browser.leave(() -> browser.find("#study").sendKeys(study + Keys.ENTER));
    browser.find("#paper").sendKeys(paper.toString());
    browser.follow("aside.paper button");
  }

  /** Waits until the words of a page of the paper stand beside the fields. */
  public void awaitPage(int number) {
    browser.find(".paper-page[data-number='" + number + "'] .words rect");
  }

  /** Turns to the page after or before the one that is shown. */
  public void turnTo(int number) {
    browser.pressOn(".page-of-paper nav a[data-page='" + number + "']");
    awaitPage(number);
  }

  /** From the first page of the paper to the figure on its third. */
  public void figureOfPageThree() {
    turnTo(2);
    turnTo(3);
    browser.follow("a[href*='figure?page=3']");
  }
}
