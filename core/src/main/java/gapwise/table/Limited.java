package gapwise.table;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/** Bytes up to a limit, so that a small file cannot unpack into an endless one. */
final class Limited extends FilterInputStream {
  private final long mostBytes;
  private long read;

  Limited(InputStream bytes, long mostBytes) {
    super(bytes);
    this.mostBytes = mostBytes;
  }

  @Override
  public int read() throws IOException {
    int next = super.read();
    count(next < 0 ? 0 : 1);
    return next;
  }

  @Override
  public int read(byte[] target, int offset, int length) throws IOException {
    int got = super.read(target, offset, length);
    count(Math.max(got, 0));
    return got;
  }

  private void count(int bytes) throws TooLarge {
    read += bytes;
    if (read > mostBytes) {
      throw new TooLarge(mostBytes);
    }
  }

  /** More bytes than the limit. */
  static final class TooLarge extends IOException {
    private static final long serialVersionUID = 1L;
    private final long mostBytes;

    TooLarge(long mostBytes) {
      super("more than " + mostBytes + " bytes");
      this.mostBytes = mostBytes;
    }

    long mostBytes() {
      return mostBytes;
    }
  }
}
