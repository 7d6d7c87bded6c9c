package gapwise.server.testing;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.extension.AfterAllCallback;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.WebDriverWait;

/** The browser of one class of tests: opened before the first, closed after the last. */
public final class OwnBrowser implements BeforeAllCallback, AfterAllCallback {
  private Path folder;
  private Chromium chromium;

  @Override
  public void beforeAll(ExtensionContext context) throws Exception {
    folder = Files.createTempDirectory("gapwise-browser");
    chromium = Chromium.open(folder);
  }

  @Override
  public void afterAll(ExtensionContext context) throws IOException {
    if (chromium != null) {
      chromium.close();
    }
    try (Stream<Path> all = Files.walk(folder)) {
      List<Path> deepestFirst = all.sorted(Comparator.reverseOrder()).toList();
      for (Path path : deepestFirst) {
        deleted(path);
      }
    }
  }

  /** A browser that ends may still take its own files away. */
  private static void deleted(Path path) {
    try {
      Files.deleteIfExists(path);
    } catch (DirectoryNotEmptyException late) {
      // What it wrote after the walk goes with the machine's temporary files.
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The browser itself. */
  public Chromium chromium() {
    return chromium;
  }

  public ChromeDriver driver() {
    return chromium.driver();
  }

  public WebDriverWait await() {
    return chromium.await();
  }

  public WebElement find(String css) {
    return chromium.find(css);
  }

  public void pressOn(String css) {
    chromium.pressOn(css);
  }

  public void kept(String css, String text) {
    chromium.kept(css, text);
  }

  public void follow(String css) {
    chromium.follow(css);
  }

  public void follow(By what) {
    chromium.follow(what);
  }

  public void leave(Runnable deed) {
    chromium.leave(deed);
  }

  public void awaitWords(String words) {
    chromium.awaitWords(words);
  }

  public void fetched(String words) {
    chromium.fetched(words);
  }

  public Path downloaded(String name) {
    return chromium.downloaded(name);
  }

  public Path downloads() {
    return chromium.downloads();
  }

  public int tooWide() {
    return chromium.tooWide();
  }

  public void width(int pixels) {
    chromium.width(pixels);
  }

  public void look(Chromium.Look look) {
    chromium.look(look);
  }

  public void settled() {
    chromium.settled();
  }

  public List<String> complaints() {
    return chromium.complaints();
  }

  /** Opens an address in a window so many pixels wide, with what the page fetches by itself. */
  public ChromeDriver at(String address, int width) {
    width(width);
    driver().get(address);
    settled();
    return driver();
  }

  /** That the address of the page that is open has a part. */
  public void assertAddress(String part) {
    String address = driver().getCurrentUrl();
    assertTrue(address.contains(part), address);
  }

  /** What has the focus. */
  public WebElement focused() {
    return driver().switchTo().activeElement();
  }

  /** Presses keys where the focus is. */
  public void press(CharSequence... keys) {
    focused().sendKeys(keys);
  }

  /** Runs the scripts of pages, or none. */
  public void scripts(boolean on) {
    driver().executeCdpCommand("Emulation.setScriptExecutionDisabled", Map.of("value", !on));
  }
}
