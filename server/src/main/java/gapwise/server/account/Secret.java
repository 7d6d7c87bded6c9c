package gapwise.server.account;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.HexFormat;

/** Secrets that nobody can guess, of which only a digest is kept. */
final class Secret {
  /** 256 bits: RFC 6750 and OWASP ask for what cannot be guessed; 128 would do. */
  private static final int BYTES = 32;

  private static final SecureRandom RANDOM = new SecureRandom();

  /** Letters and digits that are not taken for one another when they are read aloud. */
  private static final String PLAIN = "abcdefghjkmnpqrstuvwxyz23456789";

  private static final int GROUPS = 4;
  private static final int LETTERS_OF_GROUP = 5;

  private Secret() {}

  /** A new one, in letters that an address, a header and a cookie take as they are. */
  static String made() {
    byte[] bytes = new byte[BYTES];
    RANDOM.nextBytes(bytes);
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
  }

  /** A password to be typed once: 20 letters of 31, which is 99 bits. */
  static String typed() {
    StringBuilder word = new StringBuilder();
    for (int group = 0; group < GROUPS; group++) {
      word.append(group == 0 ? "" : "-");
      for (int letter = 0; letter < LETTERS_OF_GROUP; letter++) {
        word.append(PLAIN.charAt(RANDOM.nextInt(PLAIN.length())));
      }
    }
    return word.toString();
  }

  /**
   * What is kept of one: its SHA-256 in hexadecimal digits. A slow hash is for what people choose;
   * 256 random bits are found by no search.
   */
  static String digest(String secret) {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256").digest(secret.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(digest);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
