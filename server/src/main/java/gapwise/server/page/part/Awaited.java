package gapwise.server.page.part;

import static gapwise.sentence.Sentences.say;

import gapwise.search.StudySearch;
import gapwise.selection.Question;
import gapwise.server.home.Pieces;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * An answer from so many groups that it takes seconds the first time, and that is not there yet.
 *
 * @param words what is worked out, for who waits
 * @param fetching where it is fetched
 */
public record Awaited(String words, Fetching fetching) {
  /** Fewer groups than these are pooled within a second (our choice). */
  static final int MANY = 1000;

  /**
   * The wait for an answer; empty where it can be shown now.
   *
   * @param search counts the groups that report the outcome
   * @param pieces what the answer stands on
   * @param way what is asked for at once
   */
  public static Optional<Awaited> of(
      Question question, StudySearch search, Pieces pieces, Fetching.Way way, Fetching fetching) {
    int groups =
        search.count(
            question.among().withOutcomes(Set.of(question.outcome().code())).withRisks(Set.of()));
    return groups < MANY || way.shows(pieces)
        ? Optional.empty()
        : Optional.of(new Awaited(say("page.awaited", Map.of("groups", groups)), fetching));
  }

  /**
   * The wait for the place of a case, which is kept nowhere, so that whoever fetches it works it
   * out; empty where it can be shown now.
   *
   * @param groups that report what the case has reached
   */
  public static Optional<Awaited> ofCase(int groups, Fetching.Way way, Fetching fetching) {
    return groups < MANY || way != Fetching.Way.PAGE
        ? Optional.empty()
        : Optional.of(new Awaited(say("page.awaited-case", Map.of("groups", groups)), fetching));
  }
}
