package gapwise.table;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/**
 * The bytes of an XML part, up to the first name, attribute, comment or text that is longer than
 * any that people's data need. A parser collects such a piece whole, an attribute in a time that
 * grows with the square of its length, so that a small file could hold a reading up for hours.
 *
 * <p>Pieces are told apart by "<", which stands in no text, name or attribute of XML, and comments,
 * instructions and CDATA sections by their ends. That holds for bytes of UTF-8, so that a part in
 * another encoding is refused (ECMA-376 part 2 also allows UTF-16; no program is known to us that
 * writes it).
 */
final class MarkupGuard extends FilterInputStream {
  /** A cell holds 32,767 letters, each of at most 10 bytes where it is written as a number. */
  static final int LONGEST_PIECE = 512 * 1024;

  private static final byte[] COMMENT = bytes("!--");
  private static final byte[] CHARACTER_DATA = bytes("![CDATA[");
  private static final byte[] INSTRUCTION = bytes("?");

  private static final byte[] END_OF_COMMENT = bytes("-->");
  private static final byte[] END_OF_CHARACTER_DATA = bytes("]]>");
  private static final byte[] END_OF_INSTRUCTION = bytes("?>");
  private static final byte[] NEXT_MARK = bytes("<");

  /** What ends the piece under way. */
  private byte[] end = NEXT_MARK;

  /** How many bytes of the end stand at the place reached. */
  private int ofEnd;

  /** Bytes of the piece under way. */
  private int length;

  /** The first bytes after "<", as many as tell the kind of piece. */
  private final byte[] start = new byte[CHARACTER_DATA.length];

  /** How many bytes after "<" are known; the whole of {@link #start} where no more are wanted. */
  private int ofStart = start.length;

  private int seen;

  MarkupGuard(InputStream bytes) {
    super(bytes);
  }

  private static byte[] bytes(String ascii) {
    byte[] bytes = new byte[ascii.length()];
    for (int at = 0; at < bytes.length; at++) {
      bytes[at] = (byte) ascii.charAt(at);
    }
    return bytes;
  }

  @Override
  public int read() throws IOException {
    int next = super.read();
    if (next >= 0) {
      take((byte) next);
    }
    return next;
  }

  @Override
  public int read(byte[] target, int offset, int count) throws IOException {
    int got = super.read(target, offset, count);
    for (int at = 0; at < got; at++) {
      take(target[offset + at]);
    }
    return got;
  }

  @Override
  public boolean markSupported() {
    return false;
  }

  private void take(byte next) throws IOException {
    if (seen < 4) {
      seen++;
      // The marks of UTF-16, and the zeros that its first "<" has beside it.
      if (next == 0 || next == (byte) 0xFE || next == (byte) 0xFF) {
        throw new IOException("not UTF-8");
      }
    }
    length++;
    if (length > LONGEST_PIECE) {
      throw new TooLong();
    }
    if (end == NEXT_MARK && ofStart < start.length) {
      start[ofStart++] = next;
      end = endOf();
      if (end != NEXT_MARK) {
        return;
      }
    }
    lookForEnd(next);
  }

  /** The end that belongs to what is known of the start. */
  private byte[] endOf() {
    if (starts(INSTRUCTION)) {
      return END_OF_INSTRUCTION;
    }
    if (starts(COMMENT)) {
      return END_OF_COMMENT;
    }
    return starts(CHARACTER_DATA) ? END_OF_CHARACTER_DATA : NEXT_MARK;
  }

  private boolean starts(byte[] kind) {
    if (ofStart < kind.length) {
      return false;
    }
    for (int at = 0; at < kind.length; at++) {
      if (start[at] != kind[at]) {
        return false;
      }
    }
    return true;
  }

  private void lookForEnd(byte next) {
    if (next == end[ofEnd]) {
      ofEnd++;
    } else if (next != end[0]) {
      ofEnd = 0;
    } else if (ofEnd == 0 || end[ofEnd - 1] != next) {
      ofEnd = 1;
    }
    if (ofEnd == end.length) {
      ofStart = end == NEXT_MARK ? 0 : start.length;
      end = NEXT_MARK;
      ofEnd = 0;
      length = 0;
    }
  }

  /** A piece is longer than {@link #LONGEST_PIECE}. */
  static final class TooLong extends IOException {
    private static final long serialVersionUID = 1L;

    TooLong() {
      super("a piece of markup or text of more than " + LONGEST_PIECE + " bytes");
    }
  }
}
