package gapwise.server.home;

import gapwise.answer.Answers;
import gapwise.claim.Claim;
import gapwise.claim.Claims;
import gapwise.claim.Settling;
import gapwise.claim.Verdict;
import gapwise.claim.Verdict.Examined;
import gapwise.claim.Ways;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Remembers what came of the latest claims in one state of the evidence base, since hundreds of
 * analyses stand behind each. Safe for use by many threads.
 */
public final class RememberedClaims {
  private static final int MOST = 200;

  private final Claims claims;
  private final Remembered<Claim, Verdict> verdicts;
  private final Remembered<Claim, Ways> ways;
  private final Remembered<Mattering, Settling> settling;

  private record Mattering(Claim claim, OptionalDouble difference) {}

  RememberedClaims(Answers answers) {
    this.claims = new Claims(answers);
    this.verdicts =
        new Remembered<>(MOST, RowMemory.MOST_ROWS, RememberedClaims::rows, claims::examine);
    this.settling =
        new Remembered<>(
            MOST,
            asked -> claims.settle(examined(asked.claim()).orElseThrow(), asked.difference()));
    this.ways = new Remembered<>(MOST, claim -> claims.ways(examined(claim).orElseThrow()));
  }

  private static int rows(Verdict verdict) {
    return verdict instanceof Examined examined ? examined.rows().selection().rows().size() : 0;
  }

  /** Whether it is known already what may be said of a claim. */
  public boolean has(Claim claim) {
    return verdicts.has(claim);
  }

  /** What may be said of a claim, or why it cannot be examined. */
  public Verdict verdict(Claim claim) {
    return verdicts.of(claim);
  }

  /** What may be said of a claim; empty where it cannot be examined. */
  public Optional<Examined> examined(Claim claim) {
    return Optional.of(verdict(claim)).filter(Examined.class::isInstance).map(Examined.class::cast);
  }

  /** How a claim that can be examined stands under every defensible analysis. */
  public Ways ways(Claim claim) {
    return ways.of(claim);
  }

  /**
   * What study would settle an examined claim.
   *
   * @param difference that would matter, of 100 or in percent of the mean; empty for the usual one
   */
  public Settling settle(Examined examined, OptionalDouble difference) {
    return settling.of(new Mattering(examined.claim(), difference));
  }
}
