package gapwise.server.page.reference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.OwnBrowser;
import gapwise.server.testing.RunningServer;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;

/** Pairs settled by keys alone, in a real browser. All papers are invented. */
class PairsBrowserTest {
  @TempDir Path folder;

  @RegisterExtension private static final OwnBrowser BROWSER = new OwnBrowser();

  private static void press(CharSequence keys) {
    new Actions(BROWSER.driver()).sendKeys(keys).perform();
  }

  private static void awaitSettled(int count) {
    BROWSER.await().until(d -> d.findElements(By.cssSelector("[data-settled]")).size() == count);
  }

  @Test
  void oneKeySettlesAPairAndTheNextIsChosen() throws Exception {
    try (RunningServer running = KeptFiles.server(folder.resolve("home"))) {
      KeptFiles.kept(
          running,
          "many.ris",
          KeptFiles.twice(0) + KeptFiles.twice(1) + KeptFiles.twice(2) + KeptFiles.twice(3));
      BROWSER.width(1280);
      BROWSER.driver().get(running.address("/references/pairs"));
      WebElement who = BROWSER.driver().findElement(By.id("who"));
      who.sendKeys("srd");
      assertEquals(
          0, BROWSER.driver().findElements(By.cssSelector("[data-settled]")).size(), "only typed");
      press(Keys.TAB);
      press("pages and titles agree");
      press(Keys.TAB);
      press(Keys.ENTER);
      press("s");
      awaitSettled(1);
      press("r");
      awaitSettled(2);
      press("j");
      press("d");
      awaitSettled(3);
      List<WebElement> all = BROWSER.driver().findElements(By.cssSelector("[data-pair]"));
      assertEquals(4, all.size());
      assertTrue(all.get(0).getText().contains("Settled as the same paper"), all.get(0).getText());
      assertTrue(all.get(1).getText().contains("Settled as related"), all.get(1).getText());
      assertTrue(all.get(3).getText().contains("Settled as different"), all.get(3).getText());
      assertTrue(all.get(3).getText().contains("srd"), all.get(3).getText());
      BROWSER.driver().get(running.address("/references/pairs"));
      assertEquals(1, BROWSER.driver().findElements(By.cssSelector("[data-pair]")).size());
      assertEquals(
          "srd", BROWSER.driver().findElement(By.id("who")).getDomProperty("value"), "remembered");
    }
  }
}
