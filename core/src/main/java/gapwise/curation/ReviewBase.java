package gapwise.curation;

import gapwise.reference.kept.KeptJson;
import gapwise.review.Review;
import gapwise.review.ReviewVersion;
import gapwise.review.WorkSoFar;
import gapwise.store.DocumentStore;
import gapwise.store.DocumentVersion;
import gapwise.store.Write;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Keeps the review of an evidence base with all its versions; there is one. Safe for use by many
 * threads.
 */
public final class ReviewBase {
  /** Kind of the document that holds the review. */
  public static final String REVIEW = "review";

  /** Key of the review. */
  public static final String THE_REVIEW = "review";

  private final DocumentStore store;

  public ReviewBase(DocumentStore store) {
    this.store = Objects.requireNonNull(store, "store");
  }

  /**
   * What is stored of a version.
   *
   * @param review what it says
   * @param work how far the work had come
   */
  public record Stored(Review review, WorkSoFar work) {
    public Stored {
      Objects.requireNonNull(review, "review");
      Objects.requireNonNull(work, "work");
    }
  }

  /**
   * Keeps a version of the review, if nobody has changed it since it was read.
   *
   * @param work how far the work has come
   * @param seen the version that was read, 0 for none
   * @return whether it was kept
   */
  public boolean keep(Review review, WorkSoFar work, String who, String why, int seen) {
    String json = KeptJson.write(new Stored(review, work));
    Write write = Write.put(REVIEW, THE_REVIEW, json).expecting(seen);
    return store.write(List.of(write), who, why).written().isPresent();
  }

  /** The review as it stands; empty where none was written. */
  public Optional<ReviewVersion> latest() {
    return store
        .latest(REVIEW, THE_REVIEW)
        .filter(document -> !document.damaged())
        .map(ReviewBase::version);
  }

  /** All versions that can be read, the first one first. */
  public List<ReviewVersion> history() {
    return store.history(REVIEW, THE_REVIEW).stream()
        .filter(document -> !document.damaged() && !document.isDeletion())
        .map(ReviewBase::version)
        .toList();
  }

  private static ReviewVersion version(DocumentVersion document) {
    Stored stored = KeptJson.read(document.json().orElseThrow(), Stored.class);
    return new ReviewVersion(
        stored.review(),
        document.version(),
        document.when(),
        document.who(),
        document.why(),
        stored.work());
  }
}
