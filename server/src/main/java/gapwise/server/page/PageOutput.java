package gapwise.server.page;

import gg.jte.TemplateOutput;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** A page as bytes, in which a percent sign stays on the line of its number. */
final class PageOutput implements TemplateOutput {
  private static final String LOOSE = " %";
  private static final String JOINED = "\u00a0%";

  /** Nearly all pages are shorter, so that what was written need not move to a longer place. */
  private static final int USUAL_BYTES = 1 << 16;

  /** Most of the thousands of pieces of a page are shorter, and take longest to be packed up. */
  private static final int SHORT = 64;

  private static final char FIRST_OF_SEVERAL_BYTES = 0x80;

  private byte[] bytes = new byte[USUAL_BYTES];
  private int length;

  @Override
  public void writeContent(String value) {
    writeContent(value, 0, value.length());
  }

  @Override
  public void writeContent(String value, int beginIndex, int endIndex) {
    if (endIndex - beginIndex > SHORT || !wroteLetters(value, beginIndex, endIndex)) {
      writePacked(value.substring(beginIndex, endIndex));
    }
  }

  /** Writes letters of one byte each, or nothing where there are others, or a percent sign. */
  private boolean wroteLetters(String value, int beginIndex, int endIndex) {
    makeRoom(endIndex - beginIndex);
    int at = length;
    for (int i = beginIndex; i < endIndex; i++) {
      char letter = value.charAt(i);
      if (letter >= FIRST_OF_SEVERAL_BYTES || letter == '%') {
        return false;
      }
      bytes[at++] = (byte) letter;
    }
    length = at;
    return true;
  }

  private void writePacked(String value) {
    String joined = value.indexOf(LOOSE) < 0 ? value : value.replace(LOOSE, JOINED);
    writeBinaryContent(joined.getBytes(StandardCharsets.UTF_8));
  }

  private void makeRoom(int more) {
    if (more > bytes.length - length) {
      bytes = Arrays.copyOf(bytes, Math.max(2 * bytes.length, length + more));
    }
  }

  /** A page is written by one thread in thousands of pieces, so nothing is locked for each. */
  @Override
  public void writeBinaryContent(byte[] value) {
    makeRoom(value.length);
    System.arraycopy(value, 0, bytes, length, value.length);
    length += value.length;
  }

  byte[] toByteArray() {
    return Arrays.copyOf(bytes, length);
  }

  /** The page, without another copy. */
  InputStream toStream() {
    return new ByteArrayInputStream(bytes, 0, length);
  }
}
