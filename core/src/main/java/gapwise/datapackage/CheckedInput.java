package gapwise.datapackage;

import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;

/**
 * The bytes of a file of a package. It ends well only if they are those that the descriptor names;
 * more than that are never given out, however far an archive would unfold.
 */
final class CheckedInput extends FilterInputStream {
  private final PackagedFile file;
  private final MessageDigest digest = Hashing.sha256();
  private long count;
  private boolean ended;

  CheckedInput(InputStream source, PackagedFile file) {
    super(source);
    this.file = file;
  }

  @Override
  public int read() throws IOException {
    byte[] one = new byte[1];
    int read = read(one, 0, 1);
    return read < 0 ? read : one[0] & 0xff;
  }

  @Override
  public int read(byte[] bytes, int from, int length) throws IOException {
    if (length == 0) {
      return 0;
    }
    int read = in.read(bytes, from, length);
    if (read < 0) {
      end();
      return read;
    }
    digest.update(bytes, from, read);
    count += read;
    if (count > file.bytes()) {
      throw changed("It is longer than the " + file.bytes() + " bytes that the descriptor names.");
    }
    return read;
  }

  private void end() {
    if (ended) {
      return;
    }
    ended = true;
    if (count != file.bytes()) {
      throw changed(
          "It has " + count + " bytes, and the descriptor names " + file.bytes() + " bytes.");
    }
    if (!HexFormat.of().formatHex(digest.digest()).equals(file.sha256())) {
      throw changed("Its checksum (SHA-256) is not the one that the descriptor names.");
    }
  }

  private WrongInputException changed(String found) {
    return new WrongInputException(
        List.of(
            new Problem(
                file.path(),
                "file-changed",
                found + " The file was changed or cut off after it was written; get it again.")));
  }

  @Override
  public boolean markSupported() {
    return false;
  }

  @Override
  public long skip(long number) throws IOException {
    return readNBytes((int) Math.min(number, 8192)).length;
  }
}
