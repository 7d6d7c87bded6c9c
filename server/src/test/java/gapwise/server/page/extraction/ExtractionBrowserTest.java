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
import org.openqa.selenium.support.ui.ExpectedConditions;
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

  private static void awaitWords(String words) {
    BROWSER
        .await()
        .until(ExpectedConditions.textToBePresentInElementLocated(By.tagName("main"), words));
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
    awaitWords("This is the last one left for you.");
    BROWSER.driver().switchTo().activeElement().sendKeys("k");
    awaitWords("Nothing is left for " + who);
  }

  private static void extract(RunningServer running, String who, String events) {
    BROWSER.driver().get(running.address("/extraction/marl-2031"));
    BROWSER.find("#who").sendKeys(who + Keys.ENTER);
    awaitWords("The extraction of " + who);
    type("c-1-title", "Pegs of the moon for missing shin bone");
    choose("c-2-method", "autograft");
    type("c-2-patients", "12");
    new Select(BROWSER.find("#outcome")).selectByValue("union");
    BROWSER.pressOn("form[action$='/outcome'] button");
    BROWSER.find("#c-3-events");
    type("c-3-events", events);
    type("c-3-total", "12");
    BROWSER.pressOn(".hand-in a.button");
    awaitWords("it waits for what the other extracts");
    BROWSER.pressOn("input[name='key']");
    BROWSER.find("#settle-why").sendKeys("the paper gives none");
    BROWSER.find("#settle-who").sendKeys(who);
    BROWSER.pressOn("form.settle button");
    BROWSER.find("#why").sendKeys("extracted" + Keys.ENTER);
    awaitWords(who + " has handed in");
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
      BROWSER.driver().findElement(By.linkText("Pegs of the moon for missing shin bone")).click();
      BROWSER.await().until(ExpectedConditions.urlContains("reference="));
      assertEquals("marl-2031", BROWSER.find("#study").getDomProperty("value"));
      BROWSER.find("#first").sendKeys("AB");
      BROWSER.find("#second").sendKeys("CD");
      BROWSER.find("#who").sendKeys("EF" + Keys.ENTER);
      awaitWords("AB has not handed in, CD has not handed in.");
      extract(running, "AB", "9");
      extract(running, "CD", "8");
      settle(running);
      BROWSER.driver().get(running.address("/pooled?outcome=union"));
      awaitWords("The one study is agreed by two who read it apart.");
      BROWSER.find("main svg");
      BROWSER.pressOn("a[href$='/studies/marl-2031']");
      awaitWords("Read apart by AB and CD, settled by EF.");
      BROWSER.driver().findElement(By.partialLinkText("Where they differed")).click();
      awaitWords("Table 2 says nine");
      assertEquals(List.of(), BROWSER.complaints());
    }
  }

  private static void settle(RunningServer running) {
    BROWSER.driver().get(running.address("/extraction/marl-2031"));
    BROWSER.find("#settler").sendKeys("EF" + Keys.ENTER);
    awaitWords("differed once, of which 0 are settled");
    BROWSER.width(390);
    Number over =
        (Number)
            BROWSER
                .driver()
                .executeScript("return document.documentElement.scrollWidth - window.innerWidth");
    assertTrue(over.intValue() <= 0, "too wide for a phone by " + over);
    BROWSER.width(1280);
    BROWSER.find("#why").sendKeys("Table 2 says nine" + Keys.ENTER + Keys.ESCAPE);
    BROWSER.driver().switchTo().activeElement().sendKeys("1");
    awaitWords("Everything that differed is settled.");
    BROWSER.find("#finish-why").sendKeys("reconciled" + Keys.ENTER);
    awaitWords("Agreed, settled by EF.");
  }
}
