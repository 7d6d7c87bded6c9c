package gapwise.figure.forest;

import gapwise.figure.value.Check;
import java.util.Locale;
import java.util.Optional;

/** Which addresses a figure may link to. */
final class Link {
  private Link() {}

  /** Refuses any scheme but http and https, so that no script can hide behind a label. */
  static void check(Optional<String> href) {
    href.ifPresent(Link::check);
  }

  private static void check(String address) {
    String lower = Check.words(address, "href").strip().toLowerCase(Locale.ROOT);
    int colon = lower.indexOf(':');
    int slash = lower.indexOf('/');
    boolean relative = colon < 0 || (slash >= 0 && slash < colon);
    if (!relative && !lower.startsWith("https:") && !lower.startsWith("http:")) {
      throw new IllegalArgumentException(
          "href must be relative or start with http: or https:, was '" + address + "'");
    }
  }
}
