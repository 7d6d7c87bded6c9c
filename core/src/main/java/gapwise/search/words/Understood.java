package gapwise.search.words;

import java.util.List;
import java.util.Objects;

/**
 * A request in plain words, taken apart. Every word typed is in a reading, in the rest or aside.
 *
 * @param readings parts whose meaning is known, in the order typed
 * @param rest words to be looked for as text, in the order typed, quotation marks kept
 * @param aside words that join others and say nothing alone, such as "of"
 */
public record Understood(List<Reading> readings, String rest, List<String> aside) {
  public Understood {
    readings = List.copyOf(readings);
    Objects.requireNonNull(rest, "rest");
    aside = List.copyOf(aside);
  }
}
