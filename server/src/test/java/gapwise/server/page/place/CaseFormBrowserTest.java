package gapwise.server.page.place;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.OwnBrowser;
import gapwise.server.testing.SharedServer;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.ExpectedConditions;
import org.openqa.selenium.support.ui.Select;

/** The form of a case in a real browser, with script and without. */
class CaseFormBrowserTest {
  @RegisterExtension private static final SharedServer SERVER = SharedServer.withStudies();

  @RegisterExtension private static final OwnBrowser BROWSER = new OwnBrowser();

  @AfterEach
  void withScriptAgain() {
    BROWSER.scripts(true);
    // A form sent back with what is wrong stands in the log as refused; the next test starts anew.
    BROWSER.complaints();
  }

  private static ChromeDriver at(String path, int width) {
    return BROWSER.at(SERVER.address(path), width);
  }

  @Test
  void theCourseAppearsWhileOneTypesAndTheAddressStays() {
    ChromeDriver driver = at("/case?method=bone-transport&step=course", 1280);
    String address = driver.getCurrentUrl();
    assertTrue(driver.findElements(By.cssSelector("#drawn svg")).isEmpty());
    driver.findElement(By.id("duration-1")).sendKeys("9");
    BROWSER
        .await()
        .until(
            ExpectedConditions.textToBePresentInElementLocated(
                By.id("drawn"), "9.0 months (39 weeks) in all"));
    assertEquals(1, driver.findElements(By.cssSelector("#drawn svg")).size());
    driver.findElement(By.id("union")).sendKeys("8");
    BROWSER
        .await()
        .until(
            ExpectedConditions.textToBePresentInElementLocated(
                By.id("drawn"), "choose what it is counted from"));
    assertEquals("8", driver.findElement(By.id("union")).getDomProperty("value"));
    assertEquals(address, driver.getCurrentUrl());
    assertEquals(List.of(), BROWSER.complaints());
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void aMilestoneAndAPhaseAreAddedAndRemovedWithScriptAndWithout(boolean script) {
    BROWSER.scripts(script);
    ChromeDriver driver = at("/case", 390);
    new Select(driver.findElement(By.id("method"))).selectByValue("bone-transport");
    BROWSER.follow("#case button");
    BROWSER.assertAddress("step=course");
    driver.findElement(By.id("duration-1")).sendKeys("9");
    new Select(driver.findElement(By.id("milestone"))).selectByValue("partial");
    // By key: the course that is drawn meanwhile may move the button away from a click.
    BROWSER.leave(() -> BROWSER.find("#add-milestone").sendKeys(Keys.ENTER));
    BROWSER.assertAddress("with=partial");
    assertTrue(driver.findElement(By.id("partial")).isDisplayed());
    assertEquals("9", driver.findElement(By.id("duration-1")).getDomProperty("value"));

    new Select(driver.findElement(By.id("phase"))).selectByValue("temporary-frame");
    new Select(driver.findElement(By.id("after"))).selectByValue("0");
    BROWSER.leave(() -> BROWSER.find("#add-phase").sendKeys(Keys.ENTER));
    BROWSER.assertAddress("offered-1=temporary-frame");
    assertEquals("9", driver.findElement(By.id("duration-2")).getDomProperty("value"));

    BROWSER.follow("button[name=drop][value=partial]");
    BROWSER.assertAddress("less=partial");
    assertTrue(driver.findElements(By.id("partial")).isEmpty());
    BROWSER.follow("#place-it");
    assertTrue(driver.findElement(By.id("course")).getText().contains("in the frame"));
    assertFalse(driver.getCurrentUrl().contains("drop="), driver.getCurrentUrl());
    assertEquals(List.of(), BROWSER.complaints());
  }

  @ParameterizedTest
  @ValueSource(ints = {390, 1280})
  void noRowIsWiderThanTheWindow(int width) {
    ChromeDriver driver =
        at("/case?step=course&with=cost&with=end&union=8&phase-1=in-frame&duration-2=3", width);
    assertTrue(BROWSER.tooWide() <= 0, "too wide by " + BROWSER.tooWide());
    assertTrue(driver.findElement(By.id("wrong-union-from")).isDisplayed());
  }
}
