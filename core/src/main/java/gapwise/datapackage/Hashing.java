package gapwise.datapackage;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/** The hash of every file. */
final class Hashing {
  private Hashing() {}

  static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException missing) {
      throw new IllegalStateException("every Java has SHA-256", missing);
    }
  }
}
