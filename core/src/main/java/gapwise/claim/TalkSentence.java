package gapwise.claim;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.Told;
import gapwise.evidence.vocabulary.Design;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** What may honestly be said of a claim today, never with more certainty than its numbers carry. */
final class TalkSentence {
  private final Claim claim;
  private final Effect effect;
  private final Part direct;
  private final Part indirect;
  private final ArmTable table;

  TalkSentence(Claim claim, Effect effect, Part direct, Part indirect, ArmTable table) {
    this.claim = claim;
    this.effect = effect;
    this.direct = direct;
    this.indirect = indirect;
    this.table = table;
  }

  /**
   * The sentences.
   *
   * @param separate each method by itself
   * @param methods the methods of {@code separate}, in its order
   */
  String of(List<Told> separate, List<Claim.Side> methods) {
    if (direct.compared().isPresent()) {
      return ofDirect(direct.compared().get());
    }
    List<String> sentences = new ArrayList<>();
    sentences.add(none());
    indirect.compared().ifPresent(told -> sentences.add(ofIndirect(told)));
    if (!separate.isEmpty()) {
      sentences.add(separately(separate, methods));
    }
    return String.join(" ", sentences);
  }

  private String none() {
    if (direct.plan().isEmpty()) {
      return say(
          "claim.none-compared",
          Map.of(
              "first", claim.a().name(), "second", claim.b().name(), "what", claim.outcomeAmong()));
    }
    return say(
        "claim.compared-without-value",
        Map.of(
            "studies",
            direct.plan().get().at("/source/rows").size(),
            "first",
            claim.a().name(),
            "second",
            claim.b().name(),
            "what",
            claim.outcomeAmong()));
  }

  private String ofDirect(Compared told) {
    List<String> sentences = new ArrayList<>();
    sentences.add(
        say(
            "claim.compared",
            Map.of(
                "studies",
                told.studies(),
                "patients",
                told.patients(),
                "first",
                claim.a().name(),
                "second",
                claim.b().name(),
                "what",
                claim.outcomeAmong(),
                "told",
                told.words(claim))));
    sentences.addAll(judged(told));
    sentences.add(randomised(told));
    return String.join(" ", sentences);
  }

  private List<String> judged(Compared told) {
    if (told.lean() == Compared.Lean.OPEN) {
      return List.of(say("claim.direction-open"));
    }
    String judged =
        say(told.supports(claim.direction()) ? "claim.average-for-it" : "claim.average-against-it");
    return told.predictionOpen()
        ? List.of(judged, say("claim.opposite-possible"))
        : List.of(judged);
  }

  private String randomised(Compared told) {
    long randomised =
        direct.result().stream()
            .flatMap(result -> DirectPart.entered(result, effect).stream())
            .flatMap(id -> table.study(id).stream())
            .filter(study -> study.design().filter(d -> d == Design.RANDOMISED).isPresent())
            .count();
    if (randomised >= told.studies()) {
      return say(told.studies() == 1 ? "claim.one-randomised" : "claim.all-randomised");
    }
    return randomised == 0
        ? say("claim.none-randomised")
        : say("claim.some-randomised", Map.of("randomised", randomised));
  }

  private String ofIndirect(Compared told) {
    Map<String, String> values = Map.of("told", told.words(claim));
    if (told.lean() == Compared.Lean.OPEN) {
      return say("claim.third-method-open", values);
    }
    return say(
        told.supports(claim.direction())
            ? "claim.third-method-for-it"
            : "claim.third-method-against-it",
        values);
  }

  private static String separately(List<Told> separate, List<Claim.Side> methods) {
    List<String> series = new ArrayList<>();
    for (int i = 0; i < separate.size(); i++) {
      Told told = separate.get(i);
      String method = methods.get(i).name();
      String value = told.lead() + told.value().orElse("") + told.rest();
      series.add(
          told.rows()
              .filter(rows -> told.lead().isEmpty())
              .map(
                  rows ->
                      say(
                          "claim.separate-method-from",
                          Map.of("method", method, "told", value, "rows", rows)))
              .orElseGet(
                  () -> say("claim.separate-method", Map.of("method", method, "told", value))));
    }
    return say("claim.separate", Map.of("series", String.join("; ", series)));
  }
}
