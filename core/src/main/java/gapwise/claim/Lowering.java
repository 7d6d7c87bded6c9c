package gapwise.claim;

import gapwise.analysis.pooling.SubgroupsResult;
import gapwise.analysis.result.Result;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.answer.Answer;
import gapwise.answer.Blocks;
import gapwise.answer.ShortFollowUp;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.selection.SelectedRow;
import gapwise.selection.Selection;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/** Plain facts that lower certainty in a claim. They are no grade: rating is for people. */
final class Lowering {
  /** Fewer patients than this in both methods together are said to be few. */
  private static final int FEW_PATIENTS = 400;

  /** Fewer series give no test of whether small ones tell another story (Sterne et al. 2011). */
  private static final int FEWEST_FOR_SMALL_STUDY_TEST = 10;

  /** Of the I squared above which the spread is called out (common practice, no source). */
  private static final double MUCH_SPREAD_PERCENT = 50;

  private static final Set<Design> RANDOMISED = Set.of(Design.RANDOMISED);

  private final Claim claim;
  private final Selection selection;
  private final List<String> facts = new ArrayList<>();

  private Lowering(Claim claim, Selection selection) {
    this.claim = claim;
    this.selection = selection;
  }

  static List<String> of(Claim claim, Answer answer, Part direct, int definitions) {
    Lowering lowering = new Lowering(claim, answer.selection());
    lowering.comparison(direct);
    lowering.bias();
    lowering.patients();
    answer.result().ifPresent(lowering::spread);
    lowering.definitions(definitions);
    lowering.words();
    lowering.followUp();
    lowering.lengths();
    lowering.smallStudies();
    notPooled(claim, answer).ifPresent(lowering.facts::add);
    return List.copyOf(lowering.facts);
  }

  private void comparison(Part direct) {
    if (direct.compared().isEmpty()) {
      facts.add("Indirectness: no pooled direct comparison; patients of the two methods differ.");
    } else if (direct.compared().get().lean() == Compared.Lean.OPEN) {
      facts.add("Imprecision: the interval of the direct comparison holds more and less alike.");
    }
  }

  private void bias() {
    int series = selection.rows().size();
    long randomised = count(row -> row.study().design().filter(RANDOMISED::contains).isPresent());
    facts.add(
        "Risk of bias: not rated here. Patients were randomised in "
            + randomised
            + " of "
            + series
            + " series; said to be consecutive in "
            + count(row -> row.study().consecutive().equals(yes()))
            + "; outcomes read by somebody who did not operate in "
            + count(row -> row.study().assessorIndependent().equals(yes()))
            + ".");
  }

  private static Optional<YesOrNo> yes() {
    return Optional.of(YesOrNo.YES);
  }

  private void patients() {
    int patients = selection.rows().stream().mapToInt(row -> row.speaksOf().orElse(0)).sum();
    if (patients < FEW_PATIENTS) {
      facts.add(
          "Few patients: "
              + patients
              + " in all series of both methods; under "
              + FEW_PATIENTS
              + " is few (common practice, no source).");
    }
  }

  private void spread(Result result) {
    for (SubgroupsResult.Subgroup group : SynthesisResult.of(result).listOfGroups()) {
      double percent =
          group
              .heterogeneity()
              .iSquaredPercent()
              .orElse(group.heterogeneity().iSquaredPercentFromQ().orElse(0));
      boolean tau = group.heterogeneity().tauSquared().orElse(0) > 0;
      String name =
          Method.vocabulary().find(group.level()).map(Claim::nameOf).orElse(group.level());
      if (percent > MUCH_SPREAD_PERCENT) {
        facts.add("Heterogeneity: results after " + name + " differ more than chance explains.");
      } else if (tau && group.heterogeneity().iSquaredPercent().isEmpty()) {
        facts.add(
            "Heterogeneity: by the best estimate, results after "
                + name
                + " differ between series"
                + " beyond chance.");
      }
    }
  }

  private void definitions(int definitions) {
    if (definitions > 1) {
      facts.add("Mixed definitions: the series define the outcome in " + definitions + " ways.");
    }
    long silent = count(row -> row.definition(claim.outcome()).isEmpty());
    if (silent > 0 && claim.outcome().isEvent()) {
      facts.add(
          "Definition not stated in " + silent + " of " + selection.rows().size() + " series.");
    }
  }

  /** Words of the search that not all of the series have. */
  private void words() {
    selection.notes().stream()
        .filter(note -> note.code().equals("not-all-words-found"))
        .forEach(note -> facts.add("Indirectness: " + note.message()));
  }

  private void followUp() {
    ShortFollowUp.of(claim.outcome(), selection.rows())
        .ifPresent(found -> facts.add("Follow-up: " + found.words() + "."));
  }

  private void lengths() {
    if (selection.rowsOnlyOverlapping() > 0) {
      facts.add(
          "Indirectness: "
              + selection.rowsOnlyOverlapping()
              + " of "
              + selection.rows().size()
              + " series only reach into the missing bone asked for, or give no middle.");
    }
  }

  private void smallStudies() {
    long full = count(Lowering::allOrNone);
    if (full > 0) {
      facts.add(
          "Small series: in "
              + full
              + " of "
              + selection.rows().size()
              + " everybody or nobody had the event; such series are small, and successes are"
              + " published more readily.");
    }
    for (Claim.Side side : List.of(claim.a(), claim.b())) {
      long own = count(row -> row.arm().method().principal().equals(side.method()));
      if (own < FEWEST_FOR_SMALL_STUDY_TEST) {
        facts.add(
            "Unpublished results: with "
                + own
                + " series after "
                + side.name()
                + " no test can tell whether small series tell another story.");
      }
    }
  }

  private static boolean allOrNone(SelectedRow row) {
    return row.value() instanceof ReportedValue.Events events
        && events.count().share().filter(share -> share == 0 || share == 1).isPresent();
  }

  /** How many series of means could not be pooled, and why; empty where all could. */
  static Optional<String> notPooled(Claim claim, Answer answer) {
    if (claim.outcome().isEvent() || claim.outcome().kind() == Outcome.Kind.CATEGORIES) {
      return Optional.empty();
    }
    List<Result.Study> series =
        answer.result().map(result -> SynthesisResult.of(result).studies()).orElse(List.of());
    long zeros = answer.result().map(result -> Blocks.meansOfZero(answer, result)).orElse(0);
    long without = series.stream().filter(one -> one.variance().isEmpty()).count() - zeros;
    List<String> reasons = new ArrayList<>();
    if (without > 0) {
      reasons.add(
          "No standard deviation: "
              + without
              + " of "
              + series.size()
              + " series report none, nor what one could be had from; their means are listed and"
              + " could not be pooled.");
    }
    if (zeros > 0) {
      reasons.add(
          "Means of 0: "
              + zeros
              + " of "
              + series.size()
              + " series report one, which has no place on this scale; without them values look too"
              + " high.");
    }
    return Optional.of(String.join(" ", reasons)).filter(told -> !told.isEmpty());
  }

  private long count(Predicate<SelectedRow> which) {
    return selection.rows().stream().filter(which).count();
  }
}
