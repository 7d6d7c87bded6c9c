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
import gapwise.evidence.vocabulary.Method;
import gapwise.selection.SelectedRow;
import gapwise.selection.Selection;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
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
    ClaimRules.Ground ground = new ClaimRules(answers, claim).ground();
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
    ArmTable table =
        ArmTable.of(
            answers.select(
                claim.every(answer.question().clock()).withCountedAs(selection.countedAs())));
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
        Lowering.of(claim, answer, direct, selection.definitions().size()));
  }

  /** The sides in the order of the vocabulary, in which results by method stand. */
  private static List<Claim.Side> inOrder(Claim claim) {
    List<Method> order = Method.vocabulary().all();
    return Stream.of(claim.a(), claim.b())
        .sorted(Comparator.comparingInt(side -> order.indexOf(side.method())))
        .toList();
  }

  private static List<SelectedRow> rows(Selection selection, Method method) {
    return selection.rows().stream()
        .filter(row -> row.arm().method().principal().equals(method))
        .toList();
  }

  private static Set<String> stated(Claim claim, Selection selection, Method method) {
    Set<String> words = new LinkedHashSet<>();
    rows(selection, method).forEach(row -> row.definition(claim.outcome()).ifPresent(words::add));
    return words;
  }

  private static List<String> definitions(Claim claim, Selection selection) {
    List<Selection.Present> all = selection.definitions();
    if (all.size() < 2) {
      return List.of();
    }
    List<String> told = new ArrayList<>();
    for (Selection.Present one : all) {
      long a = with(claim, selection, claim.a().method(), one.code());
      long b = with(claim, selection, claim.b().method(), one.code());
      told.add(
          say(
              "claim.definition",
              Map.of(
                  "definition",
                  one.label(),
                  "ofFirst",
                  a,
                  "first",
                  claim.a().name(),
                  "ofSecond",
                  b,
                  "second",
                  claim.b().name())));
    }
    return told;
  }

  private static long with(Claim claim, Selection selection, Method method, String words) {
    return rows(selection, method).stream()
        .filter(row -> row.definition(claim.outcome()).equals(Optional.of(words)))
        .count();
  }

  private static List<Offer> offers(Claim claim, Selection selection) {
    if (selection.definitions().size() < 2) {
      return List.of();
    }
    Set<String> shared = stated(claim, selection, claim.a().method());
    shared.retainAll(stated(claim, selection, claim.b().method()));
    return shared.stream()
        .map(
            words ->
                new Offer(
                    say("claim.only-definition", Map.of("definition", words)), "definition", words))
        .toList();
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
