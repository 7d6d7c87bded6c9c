package gapwise.server.page;

import gg.jte.TemplateOutput;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** A page as bytes, in which a percent sign stays on the line of its number. */
final class PageOutput implements TemplateOutput {
  private static final String LOOSE = " %";
  private static final String JOINED = "\u00a0%";

  /** Nearly all pages are shorter, so that what was written need not move to a longer place. */
  private static final int USUAL_BYTES = 1 << 16;

  private byte[] bytes = new byte[USUAL_BYTES];
  private int length;

  @Override
  public void writeContent(String value) {
    String joined = value.indexOf(LOOSE) < 0 ? value : value.replace(LOOSE, JOINED);
    writeBinaryContent(joined.getBytes(StandardCharsets.UTF_8));
  }

  @Override
  public void writeContent(String value, int beginIndex, int endIndex) {
    writeContent(value.substring(beginIndex, endIndex));
  }

  /** A page is written by one thread in thousands of pieces, so nothing is locked for each. */
  @Override
  public void writeBinaryContent(byte[] value) {
    if (value.length > bytes.length - length) {
      bytes = Arrays.copyOf(bytes, Math.max(2 * bytes.length, length + value.length));
    }
    System.arraycopy(value, 0, bytes, length, value.length);
    length += value.length;
  }

  byte[] toByteArray() {
    return Arrays.copyOf(bytes, length);
  }
}
