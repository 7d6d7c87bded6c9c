package gapwise.intake;

import gapwise.curation.VersionStamp;
import gapwise.evidence.EvidenceJson;
import gapwise.evidence.Study;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Objects;
import java.util.Optional;

/**
 * A study that an import would put in the place of what stands there.
 *
 * @param before what stands there; empty where a person withdrew the study
 * @param stamp which version that is, and who wrote it when and why
 * @param after what would take its place
 */
public record StudyChange(Optional<Study> before, VersionStamp stamp, Study after) {
  /** Sixteen hexadecimal digits: two changes of one study never meet by chance. */
  private static final int KEY_BYTES = 8;

  public StudyChange {
    Objects.requireNonNull(before, "before");
    Objects.requireNonNull(stamp, "stamp");
    Objects.requireNonNull(after, "after");
  }

  /**
   * What a person agrees to: this content in the place of this version, and no other. Where either
   * is another meanwhile, so is the key, and the person is asked again.
   */
  public String key() {
    String what = String.join("|", after.id(), "" + stamp.version(), EvidenceJson.write(after));
    try {
      byte[] hash =
          MessageDigest.getInstance("SHA-256").digest(what.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(hash, 0, KEY_BYTES);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
