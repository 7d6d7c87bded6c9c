package gapwise.claim;

import gapwise.answer.Answers;
import gapwise.claim.Verdict.Offer;
import gapwise.claim.Verdict.Refused;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.selection.Selection;
import java.util.List;
import java.util.Optional;

/** What a claim may not compare, and what it cannot for want of reports. */
final class ClaimRules {
  private final Answers answers;
  private final Claim claim;

  ClaimRules(Answers answers, Claim claim) {
    this.answers = answers;
    this.claim = claim;
  }

  /** Why the parts of a claim do not go together, before anything is looked up. */
  static Optional<Refused> apart(Claim claim) {
    if (claim.a().method().equals(claim.b().method())) {
      return refused(
          "same-method",
          "Both sides of the claim are "
              + claim.a().name()
              + ". A claim sets one method against another; choose a second one.",
          List.of());
    }
    Outcome one = claim.a().outcome();
    Outcome other = claim.b().outcome();
    if (!one.equals(other)) {
      return refused(
          "different-outcomes",
          "“"
              + one.label()
              + "” and “"
              + other.label()
              + "” are not the same thing. "
              + one.label()
              + ": "
              + one.meaning()
              + " "
              + other.label()
              + ": "
              + other.meaning()
              + " A difference between them would say nothing of the methods.",
          List.of(offer(one), offer(other)));
    }
    if (one.kind() == Outcome.Kind.PHASE) {
      return refused(
          "not-pooled",
          one.label() + " is listed and never pooled: phases are parts of a whole, not rivals.",
          List.of());
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
    Selection a = answers.select(claim.alone(claim.a()));
    Selection b = answers.select(claim.alone(claim.b()));
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
                      new Offer("Only series that count from " + one.label(), "clock", one.code()))
              .toList();
      String rest =
          shared.isEmpty()
              ? " No start is common to both."
              : " Some series of both count from the same start.";
      return new Ground.Not(new Refused("different-clocks", clocks(a, b) + rest, shared));
    }
    Optional<Refused> definitions = definitions(a, b);
    if (definitions.isPresent()) {
      return new Ground.Not(definitions.get());
    }
    return new Ground.Shared(a.clock().or(b::clock));
  }

  private Optional<Refused> definitions(Selection a, Selection b) {
    boolean allStated = stated(a) == a.rows().size() && stated(b) == b.rows().size();
    boolean shared =
        a.definitions().stream()
            .anyMatch(one -> b.definitions().stream().anyMatch(o -> o.code().equals(one.code())));
    if (!allStated || shared) {
      return Optional.empty();
    }
    return refused(
        "different-definitions",
        "No definition of “"
            + claim.outcome().label()
            + "” is common to both sides. After "
            + claim.a().name()
            + ": "
            + quoted(a)
            + ". After "
            + claim.b().name()
            + ": "
            + quoted(b)
            + ". What is counted differs, so a difference would say nothing of the methods.",
        List.of());
  }

  private static int stated(Selection selection) {
    return selection.definitions().stream().mapToInt(Selection.Present::arms).sum();
  }

  private static String quoted(Selection selection) {
    return selection.definitions().stream()
        .map(one -> "“" + one.label() + "” (" + one.arms() + ")")
        .reduce((x, y) -> x + ", " + y)
        .orElse("");
  }

  private Refused nothing(Claim.Side side, Selection own) {
    String frame =
        side.outcome().needsFrame() && !side.method().frame()
            ? " It exists only where there is an external frame, which does not belong to this"
                + " method."
            : "";
    String left =
        own.leftOut().isEmpty()
            ? " Nothing was left out: nothing is recorded."
            : " "
                + own.leftOut().size()
                + (own.leftOut().size() == 1 ? " report was" : " reports were")
                + " left out, the first because: "
                + own.leftOut().get(0).message();
    return new Refused(
        "nothing-reported",
        "No series of "
            + side.name()
            + " here can speak of “"
            + side.outcome().label()
            + "”"
            + claim.scope()
            + "."
            + left
            + frame
            + " That is no finding about the method.",
        List.of());
  }

  private static String clocks(Selection a, Selection b) {
    return clocks(a.clock().orElseThrow(), b.clock().orElseThrow());
  }

  private static String clocks(Clock one, Clock other) {
    return "The first side counts this time from “"
        + one.label()
        + "”, the second from “"
        + other.label()
        + "”. Times on different clocks are not compared: months may lie between the two starts.";
  }

  private static Offer offer(Outcome outcome) {
    return new Offer("“" + outcome.label() + "” on both sides", "outcome", outcome.code());
  }

  private static Offer offer(Clock clock) {
    return new Offer("Both counted from " + clock.label(), "clock", clock.code());
  }

  private static Optional<Refused> refused(String code, String reason, List<Offer> offers) {
    return Optional.of(new Refused(code, reason, offers));
  }
}
