package gapwise.claim;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.Runner;
import gapwise.analysis.network.NetworkAnswer;
import gapwise.analysis.network.NetworkResult;
import gapwise.analysis.result.Result;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome.Better;
import gapwise.problem.Problem;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** The two methods of a claim compared through others, by a network of studies. */
final class IndirectPart {
  static final String HEADING = say("claim.indirect-heading");

  private final Runner runner;
  private final Claim claim;
  private final Effect effect;

  IndirectPart(Runner runner, Claim claim, Effect effect) {
    this.runner = runner;
    this.claim = claim;
    this.effect = effect;
  }

  Part of(ArmTable table) {
    ArrayNode rows = table.arms();
    for (Claim.Side side : List.of(claim.a(), claim.b())) {
      boolean there = table.studies().stream().anyMatch(s -> s.cells().containsKey(side.method()));
      if (!there) {
        return Part.none(HEADING, say("claim.method-stands-alone", Map.of("method", side.name())));
      }
    }
    ObjectNode plan = JsonNodeFactory.instance.objectNode();
    plan.put("title", say("claim.plan-indirect", Map.of("outcome", claim.outcome().label())));
    plan.putObject("source").set("rows", rows);
    plan.put("measure", effect.measure());
    plan.put("model", "network");
    plan.put("reference", claim.b().method().code());
    plan.put("better", claim.outcome().better() == Better.MORE ? "higher" : "lower");
    PlanOutcome outcome = runner.run(plan, Optional.empty());
    if (outcome instanceof PlanOutcome.Wrong wrong) {
      return new Part(
          HEADING,
          wrong.problems().stream().map(Problem::message).toList(),
          Optional.empty(),
          Optional.of(plan),
          Optional.empty());
    }
    Result result = ((PlanOutcome.Done) outcome).result();
    return result
        .part(NetworkAnswer.class)
        .flatMap(NetworkAnswer::network)
        .map(network -> told(plan, result, network, table))
        .orElseGet(
            () ->
                new Part(
                    HEADING,
                    List.of(say("claim.no-network")),
                    Optional.empty(),
                    Optional.of(plan),
                    Optional.of(result)));
  }

  private Part told(ObjectNode plan, Result result, NetworkResult network, ArmTable table) {
    List<String> path = path(network);
    if (path.isEmpty()) {
      return new Part(
          HEADING,
          List.of(
              say(
                  "claim.no-third-method",
                  Map.of("first", claim.a().name(), "second", claim.b().name()))),
          Optional.empty(),
          Optional.of(plan),
          Optional.of(result));
    }
    String through =
        path.stream()
            .map(code -> Claim.nameOf(Method.of(code)))
            .collect(Collectors.joining(", then "));
    Optional<Compared> compared = effect(network).flatMap(one -> compared(one, network, table));
    List<String> sentences = new ArrayList<>();
    if (compared.isPresent()) {
      sentences.add(
          say("claim.through", Map.of("path", through, "told", compared.get().words(claim))));
    } else {
      sentences.add(say("claim.path-not-told-apart", Map.of("path", through)));
    }
    sentences.add(say("claim.holds-only-if-alike"));
    effect(network)
        .flatMap(NetworkResult.Effect::disagreement)
        .ifPresent(
            difference ->
                sentences.add(
                    say(
                        difference.pValue() < 0.10
                            ? "claim.evidence-contradicts"
                            : "claim.evidence-agrees")));
    return new Part(HEADING, sentences, compared, Optional.of(plan), Optional.of(result));
  }

  private Optional<NetworkResult.Effect> effect(NetworkResult network) {
    return network.effects().stream()
        .filter(one -> one.treatment().equals(claim.a().method().code()))
        .filter(one -> one.against().equals(claim.b().method().code()))
        .findFirst();
  }

  private Optional<Compared> compared(
      NetworkResult.Effect one, NetworkResult network, ArmTable table) {
    boolean alone =
        network.comparisons().stream()
            .noneMatch(edge -> joins(edge, claim.a().method(), claim.b().method()));
    Optional<Result.Estimate> shown =
        alone ? Optional.of(one.shown()) : one.indirect().map(NetworkResult.Part::shown);
    return shown.map(told -> made(network, table, told));
  }

  private Compared made(NetworkResult network, ArmTable table, Result.Estimate shown) {
    List<String> piece =
        network.pieces().stream()
            .filter(one -> one.contains(claim.a().method().code()))
            .findFirst()
            .orElse(List.of());
    List<ArmTable.StudyArms> through =
        table.studies().stream().filter(study -> study.isThrough(claim, piece)).toList();
    return new Compared(
        effect,
        claim.outcome(),
        through.size(),
        Math.round(through.stream().mapToDouble(ArmTable.StudyArms::patients).sum()),
        shown.estimate(),
        shown.lower(),
        shown.upper(),
        Optional.empty());
  }

  private static boolean joins(NetworkResult.Edge edge, Method one, Method other) {
    return (edge.treatment().equals(one.code()) && edge.against().equals(other.code()))
        || (edge.treatment().equals(other.code()) && edge.against().equals(one.code()));
  }

  /**
   * Methods between the two on a shortest way that is not the direct one; empty if there is none.
   */
  private List<String> path(NetworkResult network) {
    String from = claim.a().method().code();
    String to = claim.b().method().code();
    Map<String, String> before = new HashMap<>(Map.of(from, from));
    Deque<String> next = new ArrayDeque<>(List.of(from));
    while (!next.isEmpty() && !before.containsKey(to)) {
      String here = next.remove();
      for (NetworkResult.Edge edge : network.comparisons()) {
        if (!joins(edge, claim.a().method(), claim.b().method())) {
          other(edge, here)
              .filter(there -> before.putIfAbsent(there, here) == null)
              .ifPresent(next::add);
        }
      }
    }
    List<String> between = new ArrayList<>();
    String step = before.getOrDefault(to, from);
    while (before.containsKey(to) && !step.equals(from)) {
      between.add(0, step);
      step = before.getOrDefault(step, from);
    }
    return between;
  }

  private static Optional<String> other(NetworkResult.Edge edge, String here) {
    if (edge.treatment().equals(here)) {
      return Optional.of(edge.against());
    }
    return edge.against().equals(here) ? Optional.of(edge.treatment()) : Optional.empty();
  }
}
