package gapwise.server.page;

import gg.jte.TemplateOutput;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;

/** A page as bytes, in which a percent sign stays on the line of its number. */
final class PageOutput implements TemplateOutput {
  private static final String LOOSE = " %";
  private static final String JOINED = "\u00a0%";

  /** Most pages are shorter. */
  private static final int USUAL_BYTES = 1 << 16;

  private final ByteArrayOutputStream bytes = new ByteArrayOutputStream(USUAL_BYTES);

  @Override
  public void writeContent(String value) {
    writeBinaryContent(value.replace(LOOSE, JOINED).getBytes(StandardCharsets.UTF_8));
  }

  @Override
  public void writeContent(String value, int beginIndex, int endIndex) {
    writeContent(value.substring(beginIndex, endIndex));
  }

  @Override
  public void writeBinaryContent(byte[] value) {
    bytes.write(value, 0, value.length);
  }

  byte[] toByteArray() {
    return bytes.toByteArray();
  }
}
