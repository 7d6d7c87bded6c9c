package gapwise.server.page.extraction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.page.reference.KeptFiles;
import gapwise.server.testing.OwnBrowser;
import gapwise.server.testing.RunningServer;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.support.ui.Select;

/**
 * One invented paper from a file of references through screening, two extractors and an adjudicator
 * to a forest plot of agreed records, by keys where there are some.
 */
@Timeout(400)
class ExtractionBrowserTest {
  private static final String FILE =
      "TY  - JOUR\nID  - m\nTI  - Pegs of the moon for missing shin bone\nAU  - Marl, Ida\n"
          + "PY  - 2031\nJO  - Imagined Bones\nVL  - 3\nSP  - 44\nER  - \n";

  @TempDir Path folder;
  @RegisterExtension private static final OwnBrowser BROWSER = new OwnBrowser();

  /** Enters the last field of a form, which sends it. */
  private static void enter(String id, String text) {
    BROWSER.leave(() -> BROWSER.find("#" + id).sendKeys(text + Keys.ENTER));
  }

  private static void type(String id, String text) {
    BROWSER.find("#" + id).sendKeys(text + Keys.TAB);
    BROWSER.kept("#" + id, text);
  }

  private static void choose(String id, String code) {
    new Select(BROWSER.find("#" + id)).selectByValue(code);
    BROWSER.driver().findElement(By.tagName("h1")).click();
    BROWSER.kept("#" + id, code);
  }

  private static void screen(RunningServer running, String who, String stage) {
    BROWSER.driver().get(running.address("/screening/read?who=" + who + "&stage=" + stage));
    BROWSER.awaitWords("This is the last one left for you.");
    BROWSER.leave(() -> BROWSER.press("k"));
    BROWSER.awaitWords("Nothing is left for " + who);
  }

  private static void extract(RunningServer running, String who, String events) {
    BROWSER.driver().get(running.address("/extraction/marl-2031"));
    enter("who", who);
    BROWSER.awaitWords("The extraction of " + who);
    type("c-1-title", "Pegs of the moon for missing shin bone");
    choose("c-2-method", "autograft");
    type("c-2-patients", "12");
    new Select(BROWSER.find("#outcome")).selectByValue("union");
    BROWSER.follow("form[action$='/outcome'] button");
    type("c-3-events", events);
    type("c-3-total", "12");
    BROWSER.follow(".hand-in a.button");
    BROWSER.awaitWords("it waits for what the other extracts");
    BROWSER.pressOn("input[name='key']");
    BROWSER.find("#settle-why").sendKeys("the paper gives none");
    // Whoever settled last on this machine stands there already.
    BROWSER.find("#settle-who").clear();
    BROWSER.find("#settle-who").sendKeys(who);
    BROWSER.follow("form.settle button");
    enter("why", "extracted");
    BROWSER.awaitWords(who + " has handed in");
  }

  @Test
  void fromReferencesToAForestPlotOfAgreedRecords() throws Exception {
    try (RunningServer running = RunningServer.empty(folder.resolve("home"))) {
      KeptFiles.kept(running, "one.ris", FILE);
      BROWSER.width(1280);
      for (String stage : List.of("title", "full-text")) {
        screen(running, "AB", stage);
        screen(running, "CD", stage);
      }
      BROWSER.driver().get(running.address("/extraction"));
      BROWSER.follow(By.linkText("Pegs of the moon for missing shin bone"));
      assertEquals("marl-2031", BROWSER.find("#study").getDomProperty("value"));
      BROWSER.find("#first").sendKeys("AB");
      BROWSER.find("#second").sendKeys("CD");
      enter("who", "EF");
      BROWSER.awaitWords("AB has not handed in, CD has not handed in.");
      extract(running, "AB", "9");
      extract(running, "CD", "8");
      settle(running);
      BROWSER.driver().get(running.address("/pooled?outcome=union"));
      BROWSER.awaitWords("The one study is agreed by two who read it apart.");
      BROWSER.find("main svg");
      BROWSER.follow("a[href$='/studies/marl-2031']");
      BROWSER.awaitWords("Read apart by AB and CD, settled by EF.");
      BROWSER.follow(By.partialLinkText("Where they differed"));
      BROWSER.awaitWords("Table 2 says nine");
      assertEquals(List.of(), BROWSER.complaints());
    }
  }

  private static void settle(RunningServer running) {
    BROWSER.driver().get(running.address("/extraction/marl-2031"));
    enter("settler", "EF");
    BROWSER.awaitWords("differed once, of which 0 are settled");
    BROWSER.width(390);
    int over = BROWSER.tooWide();
    assertTrue(over <= 0, "too wide for a phone by " + over);
    BROWSER.width(1280);
    BROWSER.find("#why").sendKeys("Table 2 says nine" + Keys.ENTER + Keys.ESCAPE);
    BROWSER.leave(() -> BROWSER.press("1"));
    BROWSER.awaitWords("Everything that differed is settled.");
    enter("finish-why", "reconciled");
    BROWSER.awaitWords("Agreed, settled by EF.");
  }
}
