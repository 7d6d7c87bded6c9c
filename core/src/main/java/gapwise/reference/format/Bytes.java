package gapwise.reference.format;

import java.io.IOException;
import java.io.InputStream;

/** Bytes with a look ahead of a few, from blocks. */
final class Bytes implements AutoCloseable {
  private static final int BLOCK = 1 << 16;

  private final InputStream stream;
  private final byte[] block = new byte[BLOCK];
  private int at;
  private int end;

  Bytes(InputStream stream) {
    this.stream = stream;
  }

  /** The byte so many places ahead, 0 to 255; -1 behind the end. */
  int ahead(int places) throws IOException {
    if (at + places >= end) {
      System.arraycopy(block, at, block, 0, end - at);
      end -= at;
      at = 0;
      while (end <= places) {
        int got = stream.read(block, end, BLOCK - end);
        if (got < 0) {
          return -1;
        }
        end += got;
      }
    }
    return block[at + places] & 0xff;
  }

  /** Takes bytes that were looked at. */
  void take(int count) {
    at += count;
  }

  /**
   * Length of the UTF-8 sequence that starts here (RFC 3629, section 4): 1 to 4; 0 if none does.
   */
  int sequence() throws IOException {
    int first = ahead(0);
    if (first < 0x80) {
      return first < 0 ? 0 : 1;
    }
    int length =
        first >= 0xc2 && first <= 0xdf
            ? 2
            : first >= 0xe0 && first <= 0xef ? 3 : first >= 0xf0 && first <= 0xf4 ? 4 : 0;
    for (int place = 1; place < length; place++) {
      int next = ahead(place);
      int least = place == 1 && first == 0xe0 ? 0xa0 : place == 1 && first == 0xf0 ? 0x90 : 0x80;
      int most = place == 1 && first == 0xed ? 0x9f : place == 1 && first == 0xf4 ? 0x8f : 0xbf;
      if (next < least || next > most) {
        return 0;
      }
    }
    return length;
  }

  @Override
  public void close() throws IOException {
    stream.close();
  }
}
