package gapwise.selection;

import gapwise.cohort.CohortLinks;
import gapwise.cohort.DecisionJson;
import gapwise.evidence.EvidenceJson;
import gapwise.evidence.Study;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.TreeMap;

/**
 * A hash over the content of the records read, and what persons settled of them. The content and
 * not the version number is taken, so that a copy of the evidence base that was imported afresh
 * gives the same value.
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

  /** What persons settled decides which rows are counted; without it the hash is that of before. */
  void add(CohortLinks links) {
    new TreeMap<>(links.decisions())
        .values()
        .forEach(
            decision -> {
              digest.update(DecisionJson.write(decision).getBytes(StandardCharsets.UTF_8));
              digest.update((byte) '\n');
            });
  }

  String hexadecimal() {
    return HexFormat.of().formatHex(digest.digest());
  }
}
