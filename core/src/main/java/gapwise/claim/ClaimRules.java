package gapwise.claim;

import static gapwise.sentence.Sentences.say;

import gapwise.claim.Verdict.Offer;
import gapwise.claim.Verdict.Refused;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.selection.Question;
import gapwise.selection.Selection;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** What a claim may not compare, and what it cannot for want of reports. */
final class ClaimRules {
  private final Function<Question, Selection> select;
  private final Claim claim;

  ClaimRules(Function<Question, Selection> select, Claim claim) {
    this.select = select;
    this.claim = claim;
  }

  /** Why the parts of a claim do not go together, before anything is looked up. */
  static Optional<Refused> apart(Claim claim) {
    if (claim.a().method().equals(claim.b().method())) {
      return refused(
          "same-method", say("claim.same-method", Map.of("method", claim.a().name())), List.of());
    }
    Outcome one = claim.a().outcome();
    Outcome other = claim.b().outcome();
    if (!one.equals(other)) {
      return refused(
          "different-outcomes",
          say(
              "claim.different-outcomes",
              Map.of(
                  "first",
                  one.label(),
                  "meaning",
                  one.meaning(),
                  "second",
                  other.label(),
                  "otherMeaning",
                  other.meaning())),
          List.of(offer(one), offer(other)));
    }
    if (one.kind() == Outcome.Kind.PHASE) {
      return refused(
          "not-pooled", say("claim.never-pooled", Map.of("outcome", one.label())), List.of());
    }
    if (claim.a().clock().isPresent()
        && claim.b().clock().isPresent()
        && !claim.a().clock().equals(claim.b().clock())) {
      return refused(
          "different-clocks",
          clocks(claim.a().clock().get(), claim.b().clock().get()),
          List.of(offer(claim.a().clock().get()), offer(claim.b().clock().get())));
    }
    return Optional.empty();
  }

  /** Both sides as they are recorded: the clock they share, or why they cannot be compared. */
  sealed interface Ground {
    /** They can. */
    record Shared(Optional<Clock> clock) implements Ground {}

    /** They cannot. */
    record Not(Refused why) implements Ground {}
  }

  Ground ground() {
    Selection a = select.apply(claim.alone(claim.a()));
    Selection b = select.apply(claim.alone(claim.b()));
    for (Claim.Side side : List.of(claim.a(), claim.b())) {
      Selection own = side == claim.a() ? a : b;
      if (own.rows().isEmpty()) {
        return new Ground.Not(nothing(side, own));
      }
    }
    if (a.clock().isPresent() && b.clock().isPresent() && !a.clock().equals(b.clock())) {
      List<Offer> shared =
          a.clocks().stream()
              .filter(one -> b.clocks().stream().anyMatch(o -> o.code().equals(one.code())))
              .map(
                  one ->
                      new Offer(
                          say("claim.only-clock", Map.of("clock", one.label())),
                          "clock",
                          one.code()))
              .toList();
      String sentences =
          String.join(
              " ",
              clocks(a.clock().get(), b.clock().get()),
              say(shared.isEmpty() ? "claim.no-clock-shared" : "claim.clock-shared"));
      return new Ground.Not(new Refused("different-clocks", sentences, shared));
    }
    return new Ground.Shared(a.clock().or(b::clock));
  }

  private Refused nothing(Claim.Side side, Selection own) {
    List<String> sentences = new ArrayList<>();
    sentences.add(
        say("claim.nothing-reported", Map.of("method", side.name(), "what", claim.outcomeAmong())));
    if (own.leftOut().isEmpty()) {
      sentences.add(say("claim.nothing-recorded"));
    } else {
      sentences.add(
          say(
              "claim.all-left-out",
              Map.of("reports", own.leftOut().size(), "reason", own.leftOut().get(0).message())));
    }
    if (side.outcome().needsFrame() && !side.method().frame()) {
      sentences.add(say("claim.only-with-frame"));
    }
    sentences.add(say("claim.no-finding"));
    return new Refused("nothing-reported", String.join(" ", sentences), List.of());
  }

  private static String clocks(Clock one, Clock other) {
    return say("claim.different-clocks", Map.of("first", one.label(), "second", other.label()));
  }

  private static Offer offer(Outcome outcome) {
    return new Offer(
        say("claim.outcome-on-both", Map.of("outcome", outcome.label())),
        "outcome",
        outcome.code());
  }

  private static Offer offer(Clock clock) {
    return new Offer(say("claim.both-from", Map.of("clock", clock.label())), "clock", clock.code());
  }

  private static Optional<Refused> refused(String code, String reason, List<Offer> offers) {
    return Optional.of(new Refused(code, reason, offers));
  }
}
