package gapwise.server.page.review;

import gapwise.review.ReviewChange;
import gapwise.review.ReviewStage;
import gapwise.review.StageCount;
import gapwise.server.page.Site;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * The review on one page.
 *
 * @param written whether there is one yet
 * @param title what it is called
 * @param population of whom it asks; empty where that is not said
 * @param facts its fields with what they say; those that say nothing are left out
 * @param reasons why a full text can stay out, by the protocol of screening
 * @param steps its versions, the last first
 * @param lines people with what they did, by stage
 * @param totals of each stage
 * @param flow how papers went through, in a sentence; empty where there are none
 * @param waiting what waits for the person chosen; empty where nobody is chosen
 */
public record ReviewView(
    Site site,
    boolean written,
    String title,
    String population,
    List<Fact> facts,
    List<String> reasons,
    List<Step> steps,
    List<Line> lines,
    List<Count> totals,
    String flow,
    Optional<Waiting> waiting) {
  public ReviewView {
    Objects.requireNonNull(site, "site");
    facts = List.copyOf(facts);
    reasons = List.copyOf(reasons);
    steps = List.copyOf(steps);
    lines = List.copyOf(lines);
    totals = List.copyOf(totals);
    Objects.requireNonNull(waiting, "waiting");
  }

  /** The stages, as heads of columns. */
  public List<ReviewStage> stages() {
    return List.of(ReviewStage.values());
  }

  /** One field, a line for each of its things. */
  public record Fact(String name, List<String> lines) {
    public Fact {
      lines = List.copyOf(lines);
    }
  }

  /**
   * A version.
   *
   * @param name which
   * @param written by whom, when and why
   * @param mark how far the work had come, where it is an amendment; else empty
   * @param changes what it changed
   */
  public record Step(String name, String written, String mark, List<ReviewChange> changes) {
    public Step {
      changes = List.copyOf(changes);
    }
  }

  /**
   * A person.
   *
   * @param who her name
   * @param duties what she does, in words; empty where the review does not say
   * @param href this page with what waits for her
   * @param counts by stage
   */
  public record Line(String who, String duties, String href, List<Count> counts) {
    public Line {
      counts = List.copyOf(counts);
    }
  }

  /** What of a stage. */
  public record Count(String stage, StageCount count) {}

  /**
   * What waits for a person.
   *
   * @param who her name
   * @param ways to go on; none where nothing waits
   */
  public record Waiting(String who, List<Way> ways) {
    public Waiting {
      ways = List.copyOf(ways);
    }
  }

  /** A way to go on. */
  public record Way(String words, String href) {}
}
