package gapwise.reference.format;

import java.io.IOException;
import java.util.List;
import java.util.Optional;

/**
 * A line of a file.
 *
 * @param number from 1
 * @param text the line without its end, cut where it is longer than the limit
 * @param dropped letters that were cut off
 * @param oddities what was odd in it, in words
 * @param ended whether it ends with a line end, which the last line of a file may lack
 */
record Line(int number, String text, long dropped, List<String> oddities, boolean ended) {

  /** The next line; empty at the end of the file. */
  static Optional<Line> next(TextSource source) throws IOException {
    int number = source.line();
    StringBuilder text = new StringBuilder();
    long dropped = 0;
    int letter = source.read();
    if (letter < 0) {
      return Optional.empty();
    }
    while (letter >= 0 && letter != '\n') {
      if (text.length() < Limits.FIELD) {
        text.append((char) letter);
      } else {
        dropped++;
      }
      letter = source.read();
    }
    return Optional.of(
        new Line(number, text.toString(), dropped, source.takeOddities(), letter == '\n'));
  }
}
