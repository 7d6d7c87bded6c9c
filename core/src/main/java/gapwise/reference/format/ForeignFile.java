package gapwise.reference.format;

import gapwise.problem.Problem;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;

/** Files that are no text of references, told by how they start. */
final class ForeignFile {
  /** More zero bytes than this share are no text; a stray one in a title is. */
  private static final double ZEROS = 0.02;

  private ForeignFile() {}

  static Optional<Problem> problem(byte[] head) {
    String start =
        new String(head, 0, Math.min(head.length, 2_000), StandardCharsets.ISO_8859_1)
            .replaceFirst("^\u00ef\u00bb\u00bf", "");
    String text = start.stripLeading().toLowerCase(Locale.ROOT);
    if (start.startsWith("%PDF")) {
      return is("a PDF document");
    }
    if (start.startsWith("PK\u0003\u0004")) {
      return is("a ZIP archive or an office document; unpack it, or save its references as text");
    }
    if (start.startsWith("\u001f\u008b")) {
      return is("a compressed file; unpack it first");
    }
    if (start.startsWith("\u00d0\u00cf\u0011\u00e0")) {
      return is("an old office document");
    }
    if (text.startsWith("{\\rtf")) {
      return is("a rich text document; save it as plain text");
    }
    if (text.startsWith("<!doctype html")
        || text.startsWith("<html")
        || (text.startsWith("<") && text.contains("<html"))) {
      return is("a web page, perhaps of a login or an error of the database");
    }
    if (text.startsWith("<?xml") || (text.startsWith("<") && text.contains("</"))) {
      return is("XML, which is not read");
    }
    return isBinary(head) ? is("no text") : Optional.empty();
  }

  private static Optional<Problem> is(String what) {
    return Optional.of(
        new Problem(
            "",
            "not-references",
            "The file is " + what + ". Nothing was read. " + FormatLook.EXPECTED));
  }

  /** Zeros that are not every other byte, or many control signs. */
  private static boolean isBinary(byte[] head) {
    int[] zeros = new int[2];
    int control = 0;
    for (int at = 0; at < head.length; at++) {
      int value = head[at] & 0xff;
      zeros[at % 2] += value == 0 ? 1 : 0;
      control +=
          value > 0
                  && value < 32
                  && value != 9
                  && value != 10
                  && value != 13
                  && value != 12
                  && value != 26
              ? 1
              : 0;
    }
    boolean marked =
        head.length >= 2
            && (((head[0] & 0xff) == 0xff && (head[1] & 0xff) == 0xfe)
                || ((head[0] & 0xff) == 0xfe && (head[1] & 0xff) == 0xff));
    boolean wide =
        marked
            || (Math.max(zeros[0], zeros[1]) > 0.4 * head.length / 2
                && Math.min(zeros[0], zeros[1]) < 0.05 * head.length / 2);
    if (wide) {
      return false;
    }
    return head.length > 100
        && (zeros[0] + zeros[1] > ZEROS * head.length || control > ZEROS * head.length);
  }
}
