package gapwise.server.page.screening;

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

/** Two people screen invented references by one key a choice, and a third settles. */
@Timeout(180)
class ScreeningBrowserTest {
  @TempDir Path folder;

  @RegisterExtension private static final OwnBrowser BROWSER = new OwnBrowser();

  /** One key, which brings the next paper. */
  private static void choose(String key) {
    BROWSER.leave(() -> BROWSER.press(key));
  }

  private static void enter(RunningServer running, String who) {
    BROWSER.driver().get(running.address("/screening"));
    BROWSER.leave(() -> BROWSER.find("#who").sendKeys(who, Keys.ENTER));
    BROWSER.awaitWords(who + " reads.");
  }

  @Test
  void oneKeyIsOneChoiceAndTheNextPaperComesAtOnce() throws Exception {
    try (RunningServer running = KeptFiles.server(folder.resolve("home"))) {
      KeptFiles.kept(running, "four.ris", KeptFiles.twice(0) + KeptFiles.twice(1));
      BROWSER.width(1280);
      enter(running, "AB");
      BROWSER.awaitWords("4 are left for you");
      choose("k");
      BROWSER.awaitWords("3 are left for you");
      choose("x");
      BROWSER.awaitWords("2 are left for you");
      choose("u");
      BROWSER.awaitWords("This is the last one left for you.");
      choose("b");
      BROWSER.awaitWords("You chose of this one before");
      choose("k");
      BROWSER.awaitWords("This is the last one left for you.");
      choose("x");
      BROWSER.awaitWords("Nothing is left for AB to read here.");
      enter(running, "CD");
      BROWSER.awaitWords("4 are left for you");
      choose("k");
      BROWSER.awaitWords("3 are left for you");
      choose("k");
      BROWSER.awaitWords("2 are left for you");
      choose("k");
      BROWSER.awaitWords("This is the last one left for you.");
      choose("x");
      BROWSER.awaitWords("Settle the one paper on which two people differ");
      BROWSER.follow(By.partialLinkText("Settle the one paper"));
      BROWSER.awaitWords("Title and abstract: one paper.");
      BROWSER.driver().findElement(By.cssSelector("input[name='who']")).sendKeys("EF");
      BROWSER.driver().findElement(By.cssSelector("input[name='why']")).sendKeys("it may tell");
      BROWSER.follow("button[value='keep']");
      BROWSER.awaitWords("Title and abstract: nobody differs.");
      BROWSER.driver().get(running.address("/screening"));
      String told = BROWSER.driver().findElement(By.tagName("main")).getText();
      assertTrue(told.contains("4 of 4 papers decided."), told);
      assertTrue(told.contains("AB and CD chose alike on 3 of 4 papers that both read"), told);
      assertEquals(List.of(), BROWSER.complaints());
    }
  }
}
