package gapwise.claim;

import gapwise.answer.Told;
import gapwise.evidence.vocabulary.Design;
import java.util.List;

/** What may honestly be said of a claim today, never with more certainty than its numbers carry. */
final class TalkSentence {
  private final Claim claim;
  private final Part direct;
  private final Part indirect;
  private final ArmTable table;

  TalkSentence(Claim claim, Part direct, Part indirect, ArmTable table) {
    this.claim = claim;
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
    String none =
        direct.plan().isPresent()
            ? held()
                + " compared "
                + pair()
                + " for "
                + what()
                + ", yet no common value comes of it"
            : "No study here has compared " + pair() + " directly for " + what();
    String start = none + ". ";
    String through = indirect.compared().map(told -> ofIndirect(told) + " ").orElse("");
    return start + through + separately(separate, methods);
  }

  /** How many studies hold both methods: "2 studies here have". */
  private String held() {
    int studies = direct.plan().map(plan -> plan.at("/source/rows").size()).orElse(0);
    return studies == 1 ? "One study here has" : studies + " studies here have";
  }

  private String pair() {
    return claim.a().name() + " with " + claim.b().name();
  }

  private String what() {
    return "“" + claim.outcome().label() + "”" + claim.scope();
  }

  private String ofDirect(Compared told) {
    String who =
        (told.studies() == 1 ? "One study" : told.studies() + " studies")
            + " with "
            + told.patients()
            + " patients or limbs "
            + (told.studies() == 1 ? "has" : "have")
            + " compared "
            + pair()
            + " for "
            + what()
            + ": "
            + told.words(claim)
            + ". ";
    return who + judged(told) + randomised(told);
  }

  private String judged(Compared told) {
    if (told.lean() == Compared.Lean.OPEN) {
      return "That leaves the direction open: the claim can neither be made nor denied today.";
    }
    String open = told.predictionOpen() ? " A further study could still find the opposite." : "";
    return told.supports(claim.direction())
        ? "So far the average points the way of the claim." + open
        : "So far the average points against the claim." + open;
  }

  private String randomised(Compared told) {
    long randomised =
        direct.result().stream()
            .flatMap(result -> DirectPart.entered(result, Effect.of(claim.outcome())).stream())
            .flatMap(id -> table.study(id).stream())
            .filter(study -> study.design().filter(d -> d == Design.RANDOMISED).isPresent())
            .count();
    if (randomised >= told.studies()) {
      return told.studies() == 1
          ? " It randomised the patients; one small trial settles nothing alone."
          : " All randomised the patients.";
    }
    return (randomised == 0
            ? " Patients were not randomised"
            : " Patients were randomised in " + randomised + " of them only")
        + ", so how they differ may explain it.";
  }

  private String ofIndirect(Compared told) {
    String how =
        told.lean() == Compared.Lean.OPEN
            ? "which leaves the direction open"
            : told.supports(claim.direction())
                ? "which points the way of the claim if patients of those studies are alike"
                : "which points against the claim if patients of those studies are alike";
    return "Through studies with a third method, " + told.words(claim) + ", " + how + ".";
  }

  private String separately(List<Told> separate, List<Claim.Side> methods) {
    StringBuilder text = new StringBuilder("Separate series, which are no comparison, report");
    for (int i = 0; i < separate.size(); i++) {
      Told told = separate.get(i);
      text.append(i == 0 ? " after " : "; after ")
          .append(methods.get(i).name())
          .append(": ")
          .append(told.value().orElse(""))
          .append(told.rest());
      told.rows().ifPresent(rows -> text.append(", ").append(rows));
    }
    return text.append(
            ". How the patients differ may explain how the results do: the claim cannot be made"
                + " from them.")
        .toString();
  }
}
