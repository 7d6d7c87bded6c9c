package gapwise.review.kept;

import java.util.Objects;

/**
 * A study under an answer.
 *
 * @param id its id
 * @param label how people know it
 * @param version which version of its record, 1 for the first
 * @param content what its record held, as a short checksum: two records with the same are the same,
 *     whatever their version and their base
 */
public record DigestStudy(String id, String label, int version, String content) {
  public DigestStudy {
    Objects.requireNonNull(label, "label");
    Objects.requireNonNull(content, "content");
    if (id.isBlank()) {
      throw new IllegalArgumentException("a study has an id");
    }
  }
}
