package gapwise.server.home;

import gapwise.answer.Answers;
import gapwise.claim.Claim;
import gapwise.claim.Claims;
import gapwise.claim.Settling;
import gapwise.claim.Verdict;
import gapwise.claim.Verdict.Examined;
import gapwise.claim.Ways;
import gapwise.search.StudySearch;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Remembers what came of the latest claims until the evidence base changes, since hundreds of
 * analyses stand behind each. Safe for use by many threads.
 */
public final class LatestClaims {
  private static final int MOST = 200;

  private final StudySearch search;
  private final Claims claims;
  private final Latest<Claim, Verdict> verdicts;
  private final Latest<Claim, Ways> ways;

  LatestClaims(Answers answers, StudySearch search) {
    this.search = search;
    this.claims = new Claims(answers);
    this.verdicts = new Latest<>(MOST, claims::examine);
    this.ways = new Latest<>(MOST, claim -> claims.ways(examined(claim).orElseThrow()));
  }

  /** What may be said of a claim, or why it cannot be examined. */
  public Verdict verdict(Claim claim) {
    return verdicts.at(search.shownChange(), claim);
  }

  /** What may be said of a claim; empty where it cannot be examined. */
  public Optional<Examined> examined(Claim claim) {
    return Optional.of(verdict(claim)).filter(Examined.class::isInstance).map(Examined.class::cast);
  }

  /** How a claim that can be examined stands under every defensible analysis. */
  public Ways ways(Claim claim) {
    return ways.at(search.shownChange(), claim);
  }

  /**
   * What study would settle an examined claim.
   *
   * @param difference that would matter, of 100 or in percent of the mean; empty for the usual one
   */
  public Settling settle(Examined examined, OptionalDouble difference) {
    return claims.settle(examined, difference);
  }
}
