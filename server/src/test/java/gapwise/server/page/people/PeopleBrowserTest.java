package gapwise.server.page.people;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.account.Role;
import gapwise.server.testing.Axe;
import gapwise.server.testing.OwnBrowser;
import gapwise.server.testing.RunningServer;
import gapwise.server.testing.Team;
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
import org.openqa.selenium.chrome.ChromeDriver;

/** Signing in by keys alone, and the pages of people in a real browser. */
class PeopleBrowserTest {
  @TempDir static Path folder;
  private static RunningServer running;
  private static Team team;

  @RegisterExtension private static final OwnBrowser BROWSER = new OwnBrowser();

  @BeforeAll
  static void start() {
    running = RunningServer.withStudies(folder.resolve("home"));
    team = new Team(running);
  }

  @AfterAll
  static void stop() {
    running.close();
  }

  /** The field for the name gets the focus once the page is drawn. */
  private static void signIn(Role role, String path) {
    BROWSER.driver().manage().deleteAllCookies();
    BROWSER.at(running.address(path), 1280);
    BROWSER.complaints(); // the browser notes the status 401, which is meant
    BROWSER.await().until(d -> "name".equals(BROWSER.focused().getDomAttribute("id")));
    BROWSER.press(team.of(role).name(), Keys.TAB);
    BROWSER.leave(() -> BROWSER.press(Team.PASSWORD, Keys.ENTER));
    BROWSER.awaitWords("Sign out");
  }

  private static void signOut() {
    BROWSER.width(1280);
    BROWSER.leave(() -> BROWSER.find(".person button").sendKeys(Keys.ENTER));
    BROWSER.awaitWords("Sign in");
  }

  @Test
  void whoSignsInByKeysComesToThePageThatWasAskedForAndUsesIt() {
    signIn(Role.EXTRACTOR, "/desk");
    ChromeDriver driver = BROWSER.driver();
    assertTrue(driver.getCurrentUrl().endsWith("/desk"), driver.getCurrentUrl());
    BROWSER.leave(() -> BROWSER.find("#study").sendKeys("keys-2031", Keys.ENTER));
    BROWSER.assertAddress("/desk/");
    assertEquals(List.of(), driver.findElements(By.name("who")), "nobody is asked for a name");
    assertEquals(List.of(), BROWSER.complaints());
    signOut();
    driver.get(running.address("/desk"));
    BROWSER.awaitWords("Sign in to go on.");
    BROWSER.complaints();
  }

  @Test
  void noPageOfPeopleHasABarrierAtADeskOrOnAPhone() throws Exception {
    barriers("/sign-in");
    barriers("/studies");
    signIn(Role.READER, "/studies");
    barriers("/studies");
    barriers("/screening");
    barriers("/desk"); // refused, in words
    signOut();
    signIn(Role.ADMINISTRATOR, "/people");
    team.session(team.of(Role.READER));
    team.token(team.of(Role.READER));
    for (String path : new String[] {"/", "/people", "/people/trail", "/me"}) {
      barriers(path);
    }
    signOut();
  }

  private static void barriers(String path) throws Exception {
    ChromeDriver driver = BROWSER.driver();
    for (int width : new int[] {1280, 390}) {
      BROWSER.at(running.address(path), width);
      driver.findElements(By.cssSelector("main details > summary")).stream()
          .filter(WebElement::isDisplayed)
          .forEach(fold -> fold.sendKeys(Keys.ENTER));
      assertEquals(List.of(), Axe.barriers(driver), path + " at " + width);
      assertTrue(BROWSER.tooWide() <= 0, path + " is too wide at " + width);
    }
    BROWSER.complaints(); // statuses 401 and 403 are meant
  }
}
