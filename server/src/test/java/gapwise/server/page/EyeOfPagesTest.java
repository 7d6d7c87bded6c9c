package gapwise.server.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.Chromium.Look;
import gapwise.server.testing.OwnBrowser;
import gapwise.server.testing.PageStates;
import gapwise.server.testing.SharedServer;
import gapwise.server.testing.filled.EveryPage;
import gapwise.server.testing.filled.FilledServer;
import gapwise.server.testing.filled.FilledState;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What an eye would refuse on a page, in each state of {@link PageStates} and with much on it: a
 * page wider than the window or the paper, text below 12 pixels (9 pt; common practice, no source),
 * text paler than a contrast of 4.5 on what is behind it (WCAG 2.2, 1.4.3), and words over words in
 * a row of a table or in the header.
 */
class EyeOfPagesTest {
  @RegisterExtension private static final SharedServer SERVER = SharedServer.withDemonstration();

  @RegisterExtension private static final FilledServer FILLED = new FilledServer();

  @RegisterExtension private static final OwnBrowser BROWSER = new OwnBrowser();
  private static String eye;

  @BeforeAll
  static void open() throws Exception {
    try (InputStream stream = EyeOfPagesTest.class.getResourceAsStream("eye.js")) {
      eye = new String(stream.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  static Stream<FilledState> states() {
    return EveryPage.of(SERVER::address, FILLED.states());
  }

  @ParameterizedTest
  @MethodSource("states")
  void nothingOffendsTheEye(FilledState state) {
    BROWSER.look(Look.LIGHT);
    BROWSER.width(PageStates.WIDTHS[0]);
    state.open(BROWSER.chromium());
    List<String> refused = new ArrayList<>();
    for (int width : PageStates.WIDTHS) {
      BROWSER.width(width);
      look(width, "all", "at " + width, refused);
    }
    BROWSER.look(Look.DARK);
    for (int width : new int[] {390, 1280}) {
      BROWSER.width(width);
      look(width, "contrast", "in dark at " + width, refused);
    }
    BROWSER.look(Look.PRINT);
    BROWSER.width(PageStates.PAPER);
    look(PageStates.PAPER, "width", "on paper", refused);
    assertEquals(List.of(), refused, state.name());
  }

  private static void look(int width, String what, String where, List<String> refused) {
    BROWSER.settled(); // what is fetched once it comes into sight may do so at any width
    for (Object fault : (List<?>) BROWSER.driver().executeScript(eye, width, what)) {
      refused.add(where + ": " + fault);
    }
  }

  /** A page that is wrong in each way is refused for each; one that is right for none. */
  @Test
  void theEyeSeesWhatIsWrong() {
    BROWSER.look(Look.LIGHT);
    BROWSER.width(390);
    BROWSER
        .driver()
        .get(
            "data:text/html,<!doctype html><body style='margin:0;background:white;color:black'>"
                + "<div style='width:500px'>wide</div><p style='font-size:11px'>small</p>"
                + "<p style='color:%23777777'>pale</p><p style='color:%23767676'>dark enough</p>"
                + "<div style='background:rgba(0,0,0,.9)'><p>black on nearly black</p></div>"
                + "<header>over<span style='margin-left:-20px'>under</span></header>");
    List<String> refused = new ArrayList<>();
    look(390, "all", "here", refused);
    assertEquals(5, refused.size(), refused.toString());
    for (String what : List.of("wider", "small: 11", "pale", "black on nearly", "over | under")) {
      assertTrue(refused.stream().anyMatch(one -> one.contains(what)), what + " in " + refused);
    }
  }
}
