package gapwise.server.page;

import gg.jte.TemplateOutput;
import gg.jte.output.Utf8ByteOutput;

/** A page as bytes, in which a percent sign stays on the line of its number. */
final class PageOutput implements TemplateOutput {
  private static final String LOOSE = " %";
  private static final String JOINED = "\u00a0%";

  private final Utf8ByteOutput bytes = new Utf8ByteOutput();

  @Override
  public void writeContent(String value) {
    bytes.writeContent(value.replace(LOOSE, JOINED));
  }

  @Override
  public void writeContent(String value, int beginIndex, int endIndex) {
    writeContent(value.substring(beginIndex, endIndex));
  }

  @Override
  public void writeBinaryContent(byte[] value) {
    bytes.writeBinaryContent(value);
  }

  byte[] toByteArray() {
    return bytes.toByteArray();
  }
}
