package gapwise.server.page.overlap;

import gapwise.evidence.vocabulary.Outcome;
import gapwise.server.page.Site;
import java.util.List;

/**
 * Pairs that a person should look at, and those that were settled.
 *
 * @param site the frame of the page
 * @param count how many pairs there are to look at
 * @param pairs the first of them, same papers first
 * @param settled what was settled, the last first
 */
public record OverlapsView(Site site, int count, List<Pair> pairs, List<Settled> settled) {
  public OverlapsView {
    pairs = List.copyOf(pairs);
    settled = List.copyOf(settled);
  }

  /** A study, or a group of one. */
  public record Side(String name, String label, String href) {}

  /**
   * Two records.
   *
   * @param one the first
   * @param other the second
   * @param verdict what they may be to each other, in words
   * @param agrees what fits
   * @param against what speaks against it
   * @param unknown what is not given
   * @param shared outcomes that both report
   * @param stoodOn what the proposal stood on, which the form sends again
   */
  public record Pair(
      Side one,
      Side other,
      String verdict,
      List<String> agrees,
      List<String> against,
      List<String> unknown,
      List<Outcome> shared,
      String stoodOn) {
    public Pair {
      agrees = List.copyOf(agrees);
      against = List.copyOf(against);
      unknown = List.copyOf(unknown);
      shared = List.copyOf(shared);
    }
  }

  /** What was settled of two records: which, what, by whom, when and why. */
  public record Settled(Side one, Side other, String words, String by, String reason) {}
}
