package gapwise.server.testing;

import static org.junit.jupiter.api.Assertions.fail;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.logging.Level;
import org.openqa.selenium.By;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.support.ui.ExpectedConditions;
import org.openqa.selenium.support.ui.WebDriverWait;

/** A real browser with a profile and a download folder of its own. */
public final class Chromium implements AutoCloseable {
  private static final Path BROWSER = Path.of("/usr/bin/chromium");
  private static final Path DRIVER = Path.of("/usr/bin/chromedriver");
  private static final Duration PATIENCE = Duration.ofSeconds(30);

  /** A page that does not come fails its test instead of holding all others up. */
  private static final Duration PAGE_PATIENCE = Duration.ofSeconds(90);

  /** Pixels that a bar for scrolling may take of a window. */
  private static final int BAR = 20;

  private final ChromeDriver driver;
  private final Path downloads;
  private int marks;

  private Chromium(ChromeDriver driver, Path downloads) {
    this.driver = driver;
    this.downloads = downloads;
  }

  /** Opens the browser; its absence fails the test and says what to install. */
  public static Chromium open(Path folder) throws Exception {
    if (!Files.isExecutable(BROWSER) || !Files.isExecutable(DRIVER)) {
      fail(
          "The browser tests need Chromium and its driver. On Debian: apt-get install chromium"
              + " chromium-driver");
    }
    Path downloads = Files.createDirectories(folder.resolve("downloads"));
    LoggingPreferences logs = new LoggingPreferences();
    logs.enable(LogType.BROWSER, Level.ALL);
    ChromeOptions options = new ChromeOptions();
    options.setBinary(BROWSER.toFile());
    options.setCapability("goog:loggingPrefs", logs);
    options.addArguments(
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--user-data-dir=" + Files.createDirectories(folder.resolve("profile")));
    options.setExperimentalOption(
        "prefs", Map.of("download.default_directory", downloads.toString()));
    ChromeDriverService service =
        new ChromeDriverService.Builder().usingDriverExecutable(DRIVER.toFile()).build();
    ChromeDriver driver = new ChromeDriver(service, options);
    driver.manage().timeouts().pageLoadTimeout(PAGE_PATIENCE).scriptTimeout(PAGE_PATIENCE);
    return new Chromium(driver, downloads);
  }

  public ChromeDriver driver() {
    return driver;
  }

  public Path downloads() {
    return downloads;
  }

  /** While the next page comes, the driver says of parts of the last that they are nowhere. */
  public WebDriverWait await() {
    WebDriverWait wait = new WebDriverWait(driver, PATIENCE);
    wait.ignoring(WebDriverException.class);
    return wait;
  }

  /** The first of what a selector names, once it is there. */
  public WebElement find(String css) {
    return await().until(ExpectedConditions.presenceOfElementLocated(By.cssSelector(css)));
  }

  /** Waits until the page says these words. */
  public void awaitWords(String words) {
    await().until(ExpectedConditions.textToBePresentInElementLocated(By.tagName("body"), words));
  }

  /**
   * Presses what may be put anew by the page's script at that moment, and stays on the page. What
   * leads to another page is followed instead.
   */
  public void pressOn(String css) {
    await().until(d -> pressed(By.cssSelector(css)));
  }

  private boolean pressed(By what) {
    WebElement button = driver.findElement(what);
    driver.executeScript("arguments[0].scrollIntoView({block: 'center'})", button);
    button.click();
    return true;
  }

  /** Presses what leads to another page, and waits until that page is there. */
  public void follow(String css) {
    follow(By.cssSelector(css));
  }

  /**
   * Presses what leads to another page, and waits until that page is there with its scripts run.
   * That is another document, be its address the same or not. What a page only puts into itself, a
   * download and a way to a place on the same page bring no document, and are not for this.
   */
  public void follow(By what) {
    int left = marked();
    await().until(d -> !isMarked(left) || pressed(what));
    arrived(left, "pressing " + what);
  }

  /**
   * Does once what leads to another page, such as pressing Enter in a field, and waits as {@link
   * #follow} does.
   */
  public void leave(Runnable deed) {
    int left = marked();
    deed.run();
    arrived(left, "what was done there");
  }

  /** Marks the page that is open, each time otherwise: one gone back to may still bear a mark. */
  private int marked() {
    marks++;
    driver.executeScript("window.leftByTest = arguments[0]", marks);
    return marks;
  }

  private boolean isMarked(int mark) {
    return Boolean.TRUE.equals(
        driver.executeScript("return window.leftByTest === arguments[0]", mark));
  }

  private void arrived(int left, String deed) {
    awaitTrue(
        () -> "no page came after " + deed + ", on " + driver.getCurrentUrl(),
        "window.leftByTest !== arguments[0] && document.readyState === 'complete'",
        left);
  }

  /** Waits until a field of the desk was kept with a text, whichever state the page is in then. */
  public void kept(String css, String text) {
    await()
        .until(d -> text.equals(d.findElement(By.cssSelector(css)).getDomAttribute("data-seen")));
  }

  /** How a page is shown: as a reader sets the system, or on paper. */
  public enum Look {
    LIGHT,
    DARK,
    PRINT
  }

  /** Shows the page that is open, and those opened from now on, in one look. */
  public void look(Look look) {
    driver.executeCdpCommand(
        "Emulation.setEmulatedMedia",
        Map.of(
            "media",
            look == Look.PRINT ? "print" : "screen",
            "features",
            List.of(
                Map.of(
                    "name",
                    "prefers-color-scheme",
                    "value",
                    look == Look.DARK ? "dark" : "light"))));
  }

  /** Waits until nothing is being fetched or put in its place any more and letters are drawn. */
  public void settled() {
    awaitTrue(
        () -> "still being fetched: " + driver.getCurrentUrl(),
        "document.readyState === 'complete' && document.fonts.status === 'loaded'"
            + " && !document.querySelector('.htmx-request, .htmx-swapping, .htmx-settling,"
            + " .htmx-added')");
  }

  /** Waits until what was asked at an address with these words has come and is in its place. */
  public void fetched(String words) {
    awaitTrue(
        () -> "never fetched: " + words,
        "performance.getEntriesByType('resource').some(one => one.name.includes(arguments[0]))",
        words);
    settled();
  }

  private void awaitTrue(Supplier<String> otherwise, String script, Object... arguments) {
    await()
        .withMessage(otherwise)
        .until(d -> Boolean.TRUE.equals(driver.executeScript("return " + script, arguments)));
  }

  /** A file of this name once it is downloaded, whole: the browser names it so only then. */
  public Path downloaded(String name) {
    Path file = downloads.resolve(name);
    await().until(d -> Files.exists(file));
    return file;
  }

  /** By how many pixels the page is wider than its window; none or fewer where it fits. */
  public int tooWide() {
    Number over =
        (Number)
            driver.executeScript(
                "return document.documentElement.scrollWidth"
                    + " - document.documentElement.clientWidth");
    return over.intValue();
  }

  /** The whole page as a PNG picture, below the window too, as far down as said. */
  public byte[] picture(int width, int longest) {
    Number height =
        (Number)
            driver.executeScript("return document.documentElement.getBoundingClientRect().height");
    Map<String, Object> clip =
        Map.of(
            "x",
            0,
            "y",
            0,
            "width",
            width,
            "scale",
            1,
            "height",
            Math.min(longest, Math.max(1, (int) Math.ceil(height.doubleValue()))));
    Map<String, Object> taken =
        driver.executeCdpCommand(
            "Page.captureScreenshot",
            Map.of("format", "png", "captureBeyondViewport", true, "clip", clip));
    return Base64.getDecoder().decode((String) taken.get("data"));
  }

  /** Makes the window as wide as a desk or a phone, and waits until the page knows. */
  public void width(int pixels) {
    driver.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", pixels, "height", 900, "deviceScaleFactor", 1, "mobile", pixels < 600));
    awaitTrue(
        () -> "the page is not " + pixels + " pixels wide",
        "Math.abs(visualViewport.width * visualViewport.scale - arguments[0]) <= arguments[1]",
        pixels,
        BAR);
  }

  /** Looks at a server as one who has signed in, or as nobody, from now on. */
  public void signedInBy(Optional<String> session, String address) {
    driver.executeCdpCommand("Network.clearBrowserCookies", Map.of());
    session.ifPresent(
        value ->
            driver.executeCdpCommand(
                "Network.setCookie",
                Map.of("name", "gapwise-session", "value", value, "url", address)));
  }

  /** What the browser complained of since the last call, policy violations included. */
  public List<String> complaints() {
    return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
        .filter(entry -> entry.getLevel().intValue() >= Level.WARNING.intValue())
        .map(LogEntry::getMessage)
        .toList();
  }

  @Override
  public void close() {
    driver.quit();
  }
}
