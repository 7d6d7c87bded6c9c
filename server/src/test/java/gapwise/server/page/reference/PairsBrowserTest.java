package gapwise.server.page.reference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.Chromium;
import gapwise.server.testing.RunningServer;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;

/** Pairs settled by keys alone, in a real browser. All papers are invented. */
class PairsBrowserTest {
  @TempDir Path folder;

  private static void press(Chromium browser, CharSequence keys) {
    new Actions(browser.driver()).sendKeys(keys).perform();
  }

  private static void awaitSettled(Chromium browser, int count) {
    browser.await().until(d -> d.findElements(By.cssSelector("[data-settled]")).size() == count);
  }

  @Test
  void oneKeySettlesAPairAndTheNextIsChosen() throws Exception {
    try (RunningServer running = KeptFiles.server(folder.resolve("home"));
        Chromium browser = Chromium.open(folder)) {
      KeptFiles.kept(
          running,
          "many.ris",
          KeptFiles.twice(0) + KeptFiles.twice(1) + KeptFiles.twice(2) + KeptFiles.twice(3));
      browser.width(1280);
      browser.driver().get(running.address("/references/pairs"));
      WebElement who = browser.driver().findElement(By.id("who"));
      who.sendKeys("srd");
      assertEquals(
          0, browser.driver().findElements(By.cssSelector("[data-settled]")).size(), "only typed");
      press(browser, Keys.TAB);
      press(browser, "pages and titles agree");
      press(browser, Keys.TAB);
      press(browser, Keys.ENTER);
      press(browser, "s");
      awaitSettled(browser, 1);
      press(browser, "r");
      awaitSettled(browser, 2);
      press(browser, "j");
      press(browser, "d");
      awaitSettled(browser, 3);
      List<WebElement> all = browser.driver().findElements(By.cssSelector("[data-pair]"));
      assertEquals(4, all.size());
      assertTrue(all.get(0).getText().contains("Settled as the same paper"), all.get(0).getText());
      assertTrue(all.get(1).getText().contains("Settled as related"), all.get(1).getText());
      assertTrue(all.get(3).getText().contains("Settled as different"), all.get(3).getText());
      assertTrue(all.get(3).getText().contains("srd"), all.get(3).getText());
      browser.driver().get(running.address("/references/pairs"));
      assertEquals(1, browser.driver().findElements(By.cssSelector("[data-pair]")).size());
      assertEquals(
          "srd", browser.driver().findElement(By.id("who")).getDomProperty("value"), "remembered");
    }
  }
}
