package gapwise.server.page.screening;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.page.reference.KeptFiles;
import gapwise.server.testing.Chromium;
import gapwise.server.testing.RunningServer;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.support.ui.ExpectedConditions;

/** Two people screen invented references by one key a choice, and a third settles. */
@Timeout(180)
class ScreeningBrowserTest {
  @TempDir Path folder;

  private static void press(Chromium browser, CharSequence keys) {
    browser.driver().switchTo().activeElement().sendKeys(keys);
  }

  /** Waits for the sentence that comes with the next paper. */
  private static void awaitWords(Chromium browser, String words) {
    browser
        .await()
        .until(ExpectedConditions.textToBePresentInElementLocated(By.tagName("main"), words));
  }

  private static void enter(Chromium browser, RunningServer running, String who) {
    browser.driver().get(running.address("/screening"));
    browser.driver().findElement(By.id("who")).sendKeys(who, Keys.ENTER);
    awaitWords(browser, who + " reads.");
  }

  @Test
  void oneKeyIsOneChoiceAndTheNextPaperComesAtOnce() throws Exception {
    try (RunningServer running = KeptFiles.server(folder.resolve("home"));
        Chromium browser = Chromium.open(folder)) {
      KeptFiles.kept(running, "four.ris", KeptFiles.twice(0) + KeptFiles.twice(1));
      browser.width(1280);
      enter(browser, running, "AB");
      awaitWords(browser, "4 are left for you");
      press(browser, "k");
      awaitWords(browser, "3 are left for you");
      press(browser, "x");
      awaitWords(browser, "2 are left for you");
      press(browser, "u");
      awaitWords(browser, "This is the last one left for you.");
      press(browser, "b");
      awaitWords(browser, "You chose of this one before");
      press(browser, "k");
      awaitWords(browser, "This is the last one left for you.");
      press(browser, "x");
      awaitWords(browser, "Nothing is left for AB to read here.");
      enter(browser, running, "CD");
      awaitWords(browser, "4 are left for you");
      press(browser, "k");
      awaitWords(browser, "3 are left for you");
      press(browser, "k");
      awaitWords(browser, "2 are left for you");
      press(browser, "k");
      awaitWords(browser, "This is the last one left for you.");
      press(browser, "x");
      awaitWords(browser, "Settle the one paper on which two people differ");
      browser.driver().findElement(By.partialLinkText("Settle the one paper")).click();
      awaitWords(browser, "Title and abstract: one paper.");
      browser.driver().findElement(By.cssSelector("input[name='who']")).sendKeys("EF");
      browser.driver().findElement(By.cssSelector("input[name='why']")).sendKeys("it may tell");
      browser.driver().findElement(By.cssSelector("button[value='keep']")).click();
      awaitWords(browser, "Title and abstract: nobody differs.");
      browser.driver().get(running.address("/screening"));
      String told = browser.driver().findElement(By.tagName("main")).getText();
      assertTrue(told.contains("4 of 4 papers decided."), told);
      assertTrue(told.contains("AB and CD chose alike on 3 of 4 papers that both read"), told);
      assertEquals(List.of(), browser.complaints());
    }
  }
}
