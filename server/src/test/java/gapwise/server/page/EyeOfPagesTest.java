package gapwise.server.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.Chromium;
import gapwise.server.testing.Chromium.Look;
import gapwise.server.testing.PageStates;
import gapwise.server.testing.RunningServer;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What an eye would refuse on a page, in each state of {@link PageStates}: a page wider than the
 * window or the paper, text below 12 pixels (9 pt; common practice, no source), text paler than a
 * contrast of 4.5 on what is behind it (WCAG 2.2, 1.4.3), and words over words in a row of a table
 * or in the header.
 */
class EyeOfPagesTest {
  @TempDir static Path folder;
  private static RunningServer running;
  private static Chromium browser;
  private static String eye;

  @BeforeAll
  static void open() throws Exception {
    running = RunningServer.withDemonstration(folder.resolve("home"));
    browser = Chromium.open(folder);
    try (InputStream stream = EyeOfPagesTest.class.getResourceAsStream("eye.js")) {
      eye = new String(stream.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @AfterAll
  static void close() {
    browser.close();
    running.close();
  }

  static Stream<Map.Entry<String, String>> states() {
    return PageStates.byName().entrySet().stream();
  }

  @ParameterizedTest
  @MethodSource("states")
  void nothingOffendsTheEye(Map.Entry<String, String> state) {
    browser.look(Look.LIGHT);
    browser.width(PageStates.WIDTHS[0]);
    browser.driver().get(running.address(state.getValue()));
    browser.settled();
    List<String> refused = new ArrayList<>();
    for (int width : PageStates.WIDTHS) {
      browser.width(width);
      look(width, "all", "at " + width, refused);
    }
    browser.look(Look.DARK);
    for (int width : new int[] {390, 1280}) {
      browser.width(width);
      look(width, "contrast", "in dark at " + width, refused);
    }
    browser.look(Look.PRINT);
    browser.width(PageStates.PAPER);
    look(PageStates.PAPER, "width", "on paper", refused);
    assertEquals(List.of(), refused, state.getKey());
  }

  private static void look(int width, String what, String where, List<String> refused) {
    for (Object fault : (List<?>) browser.driver().executeScript(eye, width, what)) {
      refused.add(where + ": " + fault);
    }
  }

  /** A page that is wrong in each way is refused for each; one that is right for none. */
  @Test
  void theEyeSeesWhatIsWrong() {
    browser.look(Look.LIGHT);
    browser.width(390);
    browser
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
