package gapwise.server.page;

import gg.jte.TemplateOutput;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * A page as bytes, in which a percent sign stays on the line of its number. It is held in blocks,
 * so that what was written never moves.
 */
final class PageOutput implements TemplateOutput {
  private static final String LOOSE = " %";
  private static final String JOINED = "\u00a0%";

  private static final int BLOCK_BYTES = 1 << 14;

  /** Most of the thousands of pieces of a page are shorter, and take longest to be packed up. */
  private static final int SHORT = 64;

  private static final char FIRST_OF_SEVERAL_BYTES = 0x80;

  private final List<ByteArrayInputStream> full = new ArrayList<>();
  private byte[] block = new byte[BLOCK_BYTES];
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
    if (endIndex - beginIndex > block.length - length) {
      beginBlock();
    }
    int at = length;
    for (int i = beginIndex; i < endIndex; i++) {
      char letter = value.charAt(i);
      if (letter >= FIRST_OF_SEVERAL_BYTES || letter == '%') {
        return false;
      }
      block[at++] = (byte) letter;
    }
    length = at;
    return true;
  }

  private void writePacked(String value) {
    String joined = value.indexOf(LOOSE) < 0 ? value : value.replace(LOOSE, JOINED);
    writeBinaryContent(joined.getBytes(StandardCharsets.UTF_8));
  }

  /** A page is written by one thread in thousands of pieces, so nothing is locked for each. */
  @Override
  public void writeBinaryContent(byte[] value) {
    int written = 0;
    while (written < value.length) {
      if (length == block.length) {
        beginBlock();
      }
      int fits = Math.min(value.length - written, block.length - length);
      System.arraycopy(value, written, block, length, fits);
      length += fits;
      written += fits;
    }
  }

  private void beginBlock() {
    full.add(new ByteArrayInputStream(block, 0, length));
    block = new byte[BLOCK_BYTES];
    length = 0;
  }

  /** The page, to be read once; nothing may be written after. */
  InputStream toStream() {
    full.add(new ByteArrayInputStream(block, 0, length));
    return new SequenceInputStream(Collections.enumeration(full));
  }

  /** The page; nothing may be written after. */
  byte[] toByteArray() {
    ByteArrayOutputStream whole = new ByteArrayOutputStream((full.size() + 1) * BLOCK_BYTES);
    full.forEach(part -> whole.writeBytes(part.readAllBytes()));
    whole.write(block, 0, length);
    return whole.toByteArray();
  }
}
