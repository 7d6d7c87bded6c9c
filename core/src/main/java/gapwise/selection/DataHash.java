package gapwise.selection;

import gapwise.evidence.EvidenceJson;
import gapwise.evidence.Study;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * A hash over the content of the records read. The content and not the version number is taken, so
 * that a copy of the evidence base that was imported afresh gives the same value.
 */
final class DataHash {
  private final MessageDigest digest;

  DataHash() {
    try {
      digest = MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  void add(Study study) {
    digest.update(EvidenceJson.write(study).getBytes(StandardCharsets.UTF_8));
    digest.update((byte) '\n');
  }

  String hexadecimal() {
    return HexFormat.of().formatHex(digest.digest());
  }
}
