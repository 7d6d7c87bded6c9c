package gapwise.paper.file;

import java.text.Normalizer;

/** What the letters of a file mean. */
final class Letters {
  /** Stands for a letter whose meaning the file does not tell, as Unicode provides. */
  static final String UNKNOWN = "\uFFFD";

  private Letters() {}

  /**
   * The letters of one drawn sign: a ligature gives several.
   *
   * @param meant what the file says it means, if anything
   */
  @SuppressWarnings("NullAway") // PDFBox answers null for a sign without meaning.
  static String text(String meant) {
    if (meant == null || meant.isEmpty()) {
      return UNKNOWN;
    }
    StringBuilder plain = new StringBuilder();
    meant.codePoints().forEach(point -> append(plain, point));
    return plain.toString();
  }

  private static void append(StringBuilder plain, int point) {
    if (point >= 0xFB00 && point <= 0xFB06) {
      plain.append(Normalizer.normalize(Character.toString(point), Normalizer.Form.NFKC));
    } else if (Character.getType(point) == Character.PRIVATE_USE
        || Character.isISOControl(point) && !Character.isWhitespace(point)) {
      plain.append(UNKNOWN);
    } else if (Character.isSpaceChar(point) || Character.isWhitespace(point)) {
      plain.append(' ');
    } else {
      plain.appendCodePoint(point);
    }
  }
}
