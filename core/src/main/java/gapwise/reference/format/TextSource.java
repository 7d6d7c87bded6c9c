package gapwise.reference.format;

import java.io.BufferedInputStream;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.Charset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Letters of a file one after another, with the number of their line. Bytes that are no UTF-8 are
 * read as Windows-1252 and told; zero bytes are left out and told; line ends of all kinds become
 * one sign.
 */
final class TextSource implements AutoCloseable {
  /** Odd bytes that are told one by one until somebody asks; a damaged record has some. */
  private static final int MOST_ODDITIES = 5;

  private static final char BYTE_ORDER_MARK = '\uFEFF';

  private final Bytes bytes;
  private final Reader wide;
  private final boolean strict;
  private final List<String> oddities = new ArrayList<>();
  private int line = 1;
  private int pending = -1;
  private boolean started;
  private boolean afterReturn;

  TextSource(ReferenceFile file, Encoding encoding) throws IOException {
    strict = encoding == Encoding.UTF_8;
    bytes = new Bytes(file.bytes().open());
    wide =
        new BufferedReader(
            new InputStreamReader(new Wrapped(bytes), Charset.forName(encoding.charset())));
  }

  /** Line of the letter that was read last, from 1; after a line end that of the next one. */
  int line() {
    return line;
  }

  /** The next letter, line ends as {@code \n}; -1 at the end. */
  int read() throws IOException {
    while (true) {
      int next = strict ? utf8() : wide.read();
      if (!started) {
        started = true;
        if (next == BYTE_ORDER_MARK) {
          continue;
        }
      }
      if (next == '\n' && afterReturn) {
        afterReturn = false;
        continue;
      }
      afterReturn = next == '\r';
      if (next == '\r' || next == '\n') {
        line++;
        return '\n';
      }
      if (next == 0) {
        odd("a zero byte, which was left out");
        continue;
      }
      return next;
    }
  }

  /** What was odd since this was asked last, in words. */
  List<String> takeOddities() {
    if (oddities.isEmpty()) {
      return List.of();
    }
    List<String> taken = List.copyOf(oddities);
    oddities.clear();
    return taken;
  }

  private int utf8() throws IOException {
    if (pending >= 0) {
      int low = pending;
      pending = -1;
      return low;
    }
    int first = bytes.ahead(0);
    if (first < 0x80) {
      bytes.take(first < 0 ? 0 : 1);
      return first;
    }
    int length = bytes.sequence();
    if (length == 0) {
      bytes.take(1);
      String read =
          new String(new byte[] {(byte) first}, Charset.forName(Encoding.WINDOWS_1252.charset()));
      odd(
          String.format(
              Locale.ROOT,
              "the byte %02X, which is not UTF-8, in line %d; it was read as \"%s\" of"
                  + " Windows-1252",
              first,
              line,
              read));
      return read.charAt(0);
    }
    int code = first & (0xff >> (length + 1));
    for (int place = 1; place < length; place++) {
      code = code << 6 | (bytes.ahead(place) & 0x3f);
    }
    bytes.take(length);
    if (Character.isSupplementaryCodePoint(code)) {
      pending = Character.lowSurrogate(code);
      return Character.highSurrogate(code);
    }
    return code;
  }

  private void odd(String what) {
    if (oddities.size() < MOST_ODDITIES) {
      oddities.add(what);
    }
  }

  @Override
  public void close() throws IOException {
    bytes.close();
    wide.close();
  }

  /** Bytes as a stream, for encodings that Java decodes. */
  private static final class Wrapped extends BufferedInputStream {
    Wrapped(Bytes bytes) {
      super(new BytesStream(bytes));
    }
  }

  /** One byte at a time; the buffer above asks for blocks. */
  private static final class BytesStream extends java.io.InputStream {
    private final Bytes bytes;

    BytesStream(Bytes bytes) {
      this.bytes = bytes;
    }

    @Override
    public int read() throws IOException {
      int next = bytes.ahead(0);
      bytes.take(next < 0 ? 0 : 1);
      return next;
    }

    @Override
    public int read(byte[] target, int offset, int length) throws IOException {
      int count = 0;
      int next = length == 0 ? 0 : read();
      while (next >= 0 && count < length) {
        target[offset + count++] = (byte) next;
        // One byte more is taken only if there is room for it.
        next = count < length ? read() : -1;
      }
      return count == 0 && length > 0 ? -1 : count;
    }
  }
}
