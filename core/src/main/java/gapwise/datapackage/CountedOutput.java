package gapwise.datapackage;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.security.MessageDigest;
import java.util.HexFormat;

/**
 * Passes bytes on, counts them and takes their SHA-256. Closing it does not close what is under it.
 */
final class CountedOutput extends FilterOutputStream {
  private final MessageDigest digest = Hashing.sha256();
  private long count;

  CountedOutput(OutputStream target) {
    super(target);
  }

  @Override
  public void write(int one) throws IOException {
    out.write(one);
    digest.update((byte) one);
    count++;
  }

  @Override
  public void write(byte[] bytes, int from, int length) throws IOException {
    out.write(bytes, from, length);
    digest.update(bytes, from, length);
    count += length;
  }

  @Override
  public void close() throws IOException {
    flush();
  }

  long count() {
    return count;
  }

  /** May be asked once. */
  String sha256() {
    return HexFormat.of().formatHex(digest.digest());
  }
}
