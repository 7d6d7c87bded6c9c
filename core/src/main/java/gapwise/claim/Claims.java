package gapwise.claim;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.Runner;
import gapwise.answer.Answer;
import gapwise.answer.Answers;
import gapwise.answer.Blocks;
import gapwise.answer.ComparisonAlert;
import gapwise.answer.Told;
import gapwise.claim.Verdict.Examined;
import gapwise.claim.Verdict.Offer;
import gapwise.claim.Verdict.Refused;
import gapwise.evidence.vocabulary.DefinitionKind;
import gapwise.evidence.vocabulary.Method;
import gapwise.selection.DefinitionAsked;
import gapwise.selection.SelectedRow;
import gapwise.selection.Selection;
import gapwise.selection.UnstatedClock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** Examines claims, each number through a plan that anyone can run again. Safe for threads. */
public final class Claims {
  private final Answers answers;

  public Claims(Answers answers) {
    this.answers = answers;
  }

  /** What may be said of a claim, or why it cannot be examined. */
  public Verdict examine(Claim claim) {
    Optional<Refused> apart = ClaimRules.apart(claim);
    if (apart.isPresent()) {
      return apart.get();
    }
    ClaimRules.Ground ground = new ClaimRules(answers::select, claim).ground();
    if (ground instanceof ClaimRules.Ground.Not not) {
      return not.why();
    }
    ClaimRules.Ground.Shared shared = (ClaimRules.Ground.Shared) ground;
    Answer answer = answers.ask(claim.both(shared.clock()));
    for (Claim.Side side : List.of(claim.a(), claim.b())) {
      if (rows(answer.selection(), side.method()).isEmpty()) {
        return new Refused(
            "different-clocks",
            say("claim.clock-unknown", Map.of("method", side.name())),
            List.of());
      }
    }
    return examined(claim, answer);
  }

  private Examined examined(Claim claim, Answer answer) {
    Runner runner = answers.runner();
    Selection selection = answer.selection();
    Effect effect = Effect.of(selection.settled());
    ArmTable table = ArmTable.of(answers.select(claim.every(selection)).byMethod());
    Part direct = new DirectPart(runner, claim, effect).of(table);
    Part indirect = new IndirectPart(runner, claim, effect).of(table);
    List<Told> separate =
        answer.result().map(result -> Blocks.told(answer, result)).orElse(List.of());
    List<String> definitions = definitions(claim, selection);
    return new Examined(
        claim,
        new TalkSentence(claim, effect, direct, indirect, table).of(separate, inOrder(claim)),
        direct,
        indirect,
        separate,
        Lowering.notPooled(claim, answer),
        answer,
        ComparisonAlert.of(selection.rows()),
        new AdjustedPart(runner, claim, selection).all(),
        definitions,
        offers(claim, selection),
        Lowering.of(claim, answer, direct, !shared(claim, selection).isEmpty()));
  }

  /** The sides in the order of the vocabulary, in which results by method stand. */
  private static List<Claim.Side> inOrder(Claim claim) {
    List<Method> order = Method.vocabulary().all();
    return Stream.of(claim.a(), claim.b())
        .sorted(Comparator.comparingInt(side -> order.indexOf(side.method())))
        .toList();
  }

  static List<SelectedRow> rows(Selection selection, Method method) {
    return selection.rows().stream()
        .filter(row -> row.arm().method().principal().equals(method))
        .toList();
  }

  /** How many series of each side define the outcome in each way; empty where all do alike. */
  private static List<String> definitions(Claim claim, Selection selection) {
    if (selection.alikeDefined()) {
      return List.of();
    }
    List<String> told = new ArrayList<>();
    for (Selection.Present one : selection.definitions()) {
      told.add(
          say(
              "claim.definition",
              Map.of(
                  "definition",
                  one.label(),
                  "ofFirst",
                  with(claim, selection, claim.a().method(), one.code()),
                  "allOfFirst",
                  rows(selection, claim.a().method()).size(),
                  "first",
                  claim.a().name(),
                  "ofSecond",
                  with(claim, selection, claim.b().method(), one.code()),
                  "allOfSecond",
                  rows(selection, claim.b().method()).size(),
                  "second",
                  claim.b().name())));
    }
    return told;
  }

  private static long with(Claim claim, Selection selection, Method method, String code) {
    DefinitionAsked asked = DefinitionAsked.find(code).orElseThrow();
    return rows(selection, method).stream().filter(row -> asked.fits(row.definition())).count();
  }

  /** Known definitions that series of both sides ask for. */
  private static List<Selection.Present> shared(Claim claim, Selection selection) {
    return selection.definitions().stream()
        .filter(one -> DefinitionKind.vocabulary().find(one.code()).isPresent())
        .filter(one -> with(claim, selection, claim.a().method(), one.code()) > 0)
        .filter(one -> with(claim, selection, claim.b().method(), one.code()) > 0)
        .toList();
  }

  private static List<Offer> offers(Claim claim, Selection selection) {
    List<Offer> offers = new ArrayList<>();
    if (!selection.alikeDefined() && claim.definition().isEmpty()) {
      for (Selection.Present one : shared(claim, selection)) {
        offers.add(
            new Offer(
                say("claim.only-definition", Map.of("definition", one.label())),
                "definition",
                one.code()));
      }
    }
    int silent = selection.rowsWithoutClock();
    if (silent > 0 && silent < selection.rows().size()) {
      offers.add(
          new Offer(
              say("claim.only-clock-stated"), "unstated-clock", UnstatedClock.LEAVE_OUT.code()));
    }
    return offers;
  }

  /**
   * What study would settle an examined claim.
   *
   * @param difference that would matter, of 100 or in percent of the mean; empty for the usual one
   */
  public Settling settle(Examined examined, OptionalDouble difference) {
    return new SettlingTrial(answers.runner(), examined.claim(), examined.rows()).of(difference);
  }

  /** How an examined claim stands under every defensible analysis. */
  public Ways ways(Examined examined) {
    return new ClaimWays(answers.runner(), examined).all();
  }
}
