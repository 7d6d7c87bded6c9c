package gapwise.extraction;

import com.fasterxml.jackson.annotation.JsonIgnore;
import gapwise.evidence.EvidenceJson;
import gapwise.evidence.Study;
import gapwise.screening.Reader;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What one person extracted of a paper. The next one of the same person takes its place, and the
 * first stays in the history.
 *
 * @param study id of the study
 * @param reader who
 * @param json the study as extracted, as {@link EvidenceJson} writes it
 * @param paper the file that was read beside it
 * @param doubts doubts that the person lets stand
 * @param when the moment of handing it in
 */
public record Extraction(
    String study,
    Reader reader,
    String json,
    Optional<String> paper,
    List<Doubt> doubts,
    Instant when) {
  public Extraction {
    Objects.requireNonNull(reader, "reader");
    Objects.requireNonNull(paper, "paper");
    doubts = List.copyOf(doubts);
    Objects.requireNonNull(when, "when");
    if (!EvidenceJson.read(json).id().equals(study)) {
      throw new IllegalArgumentException("the extraction of another study than " + study);
    }
  }

  /**
   * A doubt that stands.
   *
   * @param key which
   * @param by who let it stand
   * @param reason why
   */
  public record Doubt(String key, String by, String reason) {}

  /** An extraction of a study. */
  public static Extraction of(
      Study study, Reader reader, Optional<String> paper, List<Doubt> doubts, Instant when) {
    return new Extraction(study.id(), reader, EvidenceJson.write(study), paper, doubts, when);
  }

  /** The study as it was extracted. */
  @JsonIgnore
  public Study extracted() {
    return EvidenceJson.read(json);
  }

  /** The key under which it is kept. */
  @JsonIgnore
  public String key() {
    return key(study, reader);
  }

  /** The key under which what a person extracted is kept. */
  public static String key(String study, Reader reader) {
    return study + " " + reader.key();
  }
}
