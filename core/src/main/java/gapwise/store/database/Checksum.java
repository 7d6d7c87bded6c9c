package gapwise.store.database;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * The checksum that is kept beside each content: SHA-256 (FIPS 180-4) of its UTF-8 bytes, as 64
 * hexadecimal digits in lower case. Any program can work it out again.
 */
public final class Checksum {
  private Checksum() {}

  /** The checksum of a content. */
  public static String of(byte[] content) {
    return HexFormat.of().formatHex(sha256().digest(content));
  }

  /** A fresh sum that bytes are added to. */
  public static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException missing) {
      throw new IllegalStateException("every Java has SHA-256", missing);
    }
  }
}
