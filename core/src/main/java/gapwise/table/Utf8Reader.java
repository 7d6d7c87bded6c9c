package gapwise.table;

import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * Strict UTF-8, decoded line by line so that a byte that is no UTF-8 can be told by its line, and
 * with a limit, so that one quotation mark that is never closed cannot pull a whole file into
 * memory. A byte order mark is dropped.
 */
final class Utf8Reader extends Reader {
  /** Longest line and longest record, in bytes. Our choice: a long abstract has 10,000. */
  static final int LONGEST = 4 * 1024 * 1024;

  private static final char BYTE_ORDER_MARK = '\uFEFF';

  private static final int BYTES_AT_A_TIME = 1 << 16;

  private final InputStream bytes;
  private final byte[] block = new byte[BYTES_AT_A_TIME];
  private int blockAt;
  private int blockEnd;
  private String line = "";
  private int at;
  private int lineNumber;
  private long sinceRecord;

  Utf8Reader(InputStream bytes) {
    this.bytes = bytes;
  }

  /** The first line with its end, without taking it; empty for an empty file. */
  String peekFirstLine() throws IOException {
    if (lineNumber == 0) {
      nextLine();
      if (!line.isEmpty() && line.charAt(0) == BYTE_ORDER_MARK) {
        line = line.substring(1);
      }
    }
    return line;
  }

  /** The limit on a record counts from here again. */
  void startRecord() {
    sinceRecord = 0;
  }

  @Override
  public int read(char[] target, int offset, int length) throws IOException {
    if (length == 0) {
      return 0;
    }
    peekFirstLine();
    if (at == line.length()) {
      nextLine();
      if (line.isEmpty()) {
        return -1;
      }
    }
    int count = Math.min(length, line.length() - at);
    line.getChars(at, at + count, target, offset);
    at += count;
    sinceRecord += count;
    if (sinceRecord > LONGEST) {
      throw new TooLong(lineNumber);
    }
    return count;
  }

  private void nextLine() throws IOException {
    byte[] taken = new byte[256];
    int length = 0;
    boolean ended = false;
    while (!ended && hasNext()) {
      byte next = block[blockAt++];
      if (length == taken.length) {
        taken = Arrays.copyOf(taken, 2 * length);
      }
      taken[length++] = next;
      if (length > LONGEST) {
        throw new TooLong(lineNumber + 1);
      }
      ended = next == '\n' || (next == '\r' && !(hasNext() && block[blockAt] == '\n'));
    }
    lineNumber++;
    at = 0;
    line = decoded(ByteBuffer.wrap(taken, 0, length));
  }

  /** Whether there is a further byte, which then stands in the block. */
  private boolean hasNext() throws IOException {
    if (blockAt == blockEnd) {
      blockAt = 0;
      blockEnd = Math.max(0, bytes.read(block, 0, block.length));
    }
    return blockAt < blockEnd;
  }

  private String decoded(ByteBuffer taken) throws NotUtf8 {
    try {
      return StandardCharsets.UTF_8
          .newDecoder()
          .onMalformedInput(CodingErrorAction.REPORT)
          .onUnmappableCharacter(CodingErrorAction.REPORT)
          .decode(taken)
          .toString();
    } catch (CharacterCodingException undecodable) {
      throw new NotUtf8(lineNumber);
    }
  }

  @Override
  public void close() throws IOException {
    bytes.close();
  }

  /** A line holds bytes that are not UTF-8. */
  static final class NotUtf8 extends IOException {
    private static final long serialVersionUID = 1L;
    private final int lineNumber;

    NotUtf8(int lineNumber) {
      super("not UTF-8 in line " + lineNumber);
      this.lineNumber = lineNumber;
    }

    int lineNumber() {
      return lineNumber;
    }
  }

  /** A line or record is longer than {@link #LONGEST}. */
  static final class TooLong extends IOException {
    private static final long serialVersionUID = 1L;

    TooLong(int lineNumber) {
      super("too long at line " + lineNumber);
    }
  }
}
