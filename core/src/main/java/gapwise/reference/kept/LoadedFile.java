package gapwise.reference.kept;

import gapwise.reference.format.FileAnswer;
import gapwise.reference.format.Format;
import gapwise.reference.format.ReferenceFile;
import java.io.IOException;
import java.io.InputStream;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Objects;

/**
 * A file that was handed in.
 *
 * @param load its key, a hash of its bytes: the same file is the same load under any name
 * @param file its name
 * @param format its format
 * @param encoding its encoding
 * @param read records that were read, doubtful ones among them
 * @param doubtful records that were read and that a person should look at
 * @param refused records that stay out
 */
public record LoadedFile(
    String load, String file, Format format, String encoding, int read, int doubtful, int refused) {
  /** Bytes of the hash that are written out; a collision is out of the question. */
  private static final int BYTES = 16;

  private static final int BUFFER = 1 << 16;

  public LoadedFile {
    Objects.requireNonNull(load, "load");
    Objects.requireNonNull(file, "file");
    Objects.requireNonNull(format, "format");
    Objects.requireNonNull(encoding, "encoding");
    if (load.isBlank() || read < 0 || doubtful < 0 || refused < 0) {
      throw new IllegalArgumentException("a load needs a key and counts of 0 or more");
    }
  }

  /** What became of a file of a known format. */
  public static LoadedFile of(String load, FileAnswer answer) {
    return new LoadedFile(
        load,
        answer.name(),
        answer.format().orElseThrow(() -> new IllegalArgumentException("a file without a format")),
        answer.encoding(),
        answer.read(),
        answer.doubtful(),
        answer.refused());
  }

  /**
   * The key of a file, read as a stream.
   *
   * @throws IOException if it cannot be read
   */
  public static String key(ReferenceFile file) throws IOException {
    MessageDigest digest = Fingerprint.digest();
    try (InputStream bytes = new DigestInputStream(file.bytes().open(), digest)) {
      byte[] buffer = new byte[BUFFER];
      while (bytes.read(buffer) >= 0) {
        // The digest sees what passes.
      }
    }
    return HexFormat.of().formatHex(digest.digest(), 0, BYTES);
  }
}
