package gapwise.server.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.OwnBrowser;
import gapwise.server.testing.SharedServer;
import java.util.List;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * That lists and tables of results fit every window: the page is no wider than it, and no cell or
 * box holds more than it shows.
 */
class WidthsTest {
  /** A small phone, a phone, a tablet, a desk and a wide screen, in pixels. */
  private static final int[] WIDTHS = {320, 390, 768, 1280, 1920};

  /** Boxes that are seen and hold more than they show, by what they are and how much they hold. */
  private static final String CLIPPED =
      "return [...document.querySelectorAll('main table, main td, main th, main .scroll, main li,"
          + " main p')].filter(one => one.checkVisibility() && !one.closest('.unseen')"
          + " && !one.closest('pre') && !one.closest('.take') && !one.closest('svg')"
          + " && getComputedStyle(one.closest('thead') || one).clipPath === 'none'"
          + " && one.scrollWidth > one.clientWidth + 1 && one.clientWidth > 0)"
          + ".map(one => one.tagName + '.' + one.className + ' ' + one.scrollWidth + ' of '"
          + " + one.clientWidth)";

  @RegisterExtension private static final SharedServer SERVER = SharedServer.withDemonstration();

  @RegisterExtension private static final OwnBrowser BROWSER = new OwnBrowser();

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/studies",
        "/studies?outcome=primary-union",
        "/studies?outcome=time-to-union",
        "/studies?outcome=unplanned-operations",
        "/studies?outcome=time-to-union&from=5&to=8",
        "/studies/invented-55",
        "/studies/invented-03",
        "/pooled?outcome=primary-union",
        "/pooled?outcome=time-to-union",
        "/pooled?outcome=union&method=bone-transport"
      })
  void nothingIsClippedAtAnyWidth(String path) {
    for (int width : WIDTHS) {
      BROWSER.at(SERVER.address(path), width);
      Object over =
          BROWSER
              .driver()
              .executeScript("return document.documentElement.scrollWidth - arguments[0]", width);
      assertTrue(((Number) over).intValue() <= 0, path + " is too wide at " + width);
      assertEquals(List.of(), BROWSER.driver().executeScript(CLIPPED), path + " at " + width);
    }
  }
}
