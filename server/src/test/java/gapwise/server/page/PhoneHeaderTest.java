package gapwise.server.page;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.server.testing.Chromium.Look;
import gapwise.server.testing.OwnBrowser;
import gapwise.server.testing.PageStates;
import gapwise.server.testing.SharedServer;
import gapwise.server.testing.filled.FilledServer;
import gapwise.server.testing.filled.FilledState;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The header of a phone takes two lines, whoever is signed in and however long names are. */
class PhoneHeaderTest {
  @RegisterExtension private static final SharedServer SERVER = SharedServer.withDemonstration();

  @RegisterExtension private static final FilledServer FILLED = new FilledServer();

  @RegisterExtension private static final OwnBrowser BROWSER = new OwnBrowser();

  /** What does not stand on one line, or is cut, of each line of the header. */
  private static final String FAULTS =
      """
      const lines = [['.brand', '.invented', '.top > .menu > summary'],
          ['.pages > summary', '.strip span']];
      const faults = [];
      let below = 0;
      for (const line of lines) {
        const seen = line.map(one => document.querySelector('header ' + one))
            .filter(one => one && one.checkVisibility());
        const boxes = seen.map(one => one.getBoundingClientRect());
        const top = Math.max(...boxes.map(one => one.top));
        const bottom = Math.min(...boxes.map(one => one.bottom));
        if (boxes.length > 1 && top >= bottom) faults.push('not on one line: ' + line);
        if (boxes.some(one => one.top < below)) faults.push('over the line above: ' + line);
        seen.forEach((one, at) => {
          const text = document.createRange();
          text.selectNodeContents(one);
          const height = text.getBoundingClientRect().height;
          if (height > 1.9 * parseFloat(getComputedStyle(one).lineHeight))
            faults.push('on two lines: ' + one.textContent);
          if (one.scrollWidth > one.clientWidth + 1 && one.clientWidth > 0)
            faults.push('cut: ' + one.textContent);
          if (boxes[at].right > window.innerWidth) faults.push('outside: ' + one.textContent);
        });
        below = bottom;
      }
      if (document.querySelector('header .person')?.checkVisibility())
        faults.push('who is signed in stands outside the menu');
      return faults;
      """;

  static Stream<FilledState> states() {
    return Stream.concat(
        Stream.of(
                "first page",
                "compare: nothing asked",
                "funnel: too few",
                "over time: no curve",
                "comparisons",
                "case: nothing asked",
                "shared patients",
                "studies")
            .map(name -> FilledState.of(name, SERVER.address(PageStates.byName().get(name)))),
        FILLED.states().stream().filter(state -> !state.name().startsWith("desk: a page")));
  }

  @ParameterizedTest
  @MethodSource("states")
  void twoLines(FilledState state) {
    BROWSER.look(Look.LIGHT);
    for (int width : new int[] {320, 390}) {
      BROWSER.width(width);
      state.open(BROWSER.chromium());
      assertEquals(List.of(), BROWSER.driver().executeScript(FAULTS), state.name() + " " + width);
    }
  }
}
