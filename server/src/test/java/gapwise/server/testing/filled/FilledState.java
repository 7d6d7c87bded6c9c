package gapwise.server.testing.filled;

import gapwise.server.testing.Chromium;
import java.util.Optional;

/**
 * A page as it is looked at.
 *
 * @param name what it shows
 * @param address the whole of it, with the server
 * @param session who looks at it, as the value of a browser's cookie; empty where nobody signs in
 */
public record FilledState(String name, String address, Optional<String> session) {
  /** One that is looked at without signing in. */
  public static FilledState of(String name, String address) {
    return new FilledState(name, address, Optional.empty());
  }

  /** Opens it in a browser, as whoever looks at it. */
  public void open(Chromium browser) {
    browser.signedInBy(session, address);
    browser.driver().get(address);
    browser.settled();
  }

  @Override
  public String toString() {
    return name;
  }
}
