package gapwise.claim;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.analysis.subgroups.SubgroupsResult;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.answer.Answer;
import gapwise.answer.Blocks;
import gapwise.answer.PooledValue;
import gapwise.answer.ShortFollowUp;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.selection.LengthNotes;
import gapwise.selection.SelectedRow;
import gapwise.selection.Selection;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
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

  /** Notes of a selection that make it speak less directly of the claim. */
  private static final Set<String> INDIRECT =
      Set.of(
          "not-all-words-found",
          "clock-not-stated",
          "clock-not-stated-by-all",
          "read-second-hand",
          "overlap-suspected",
          "from-other-side");

  private final Claim claim;
  private final Selection selection;
  private final List<String> facts = new ArrayList<>();

  private Lowering(Claim claim, Selection selection) {
    this.claim = claim;
    this.selection = selection;
  }

  static List<String> of(Claim claim, Answer answer, Part direct, boolean definitionShared) {
    Lowering lowering = new Lowering(claim, answer.selection());
    lowering.comparison(direct);
    lowering.bias();
    lowering.patients();
    answer.result().ifPresent(lowering::spread);
    lowering.definitions(definitionShared);
    lowering.notes();
    lowering.followUp();
    lowering.lengths();
    lowering.smallStudies();
    notPooled(claim, answer).ifPresent(lowering.facts::add);
    return List.copyOf(lowering.facts);
  }

  private void comparison(Part direct) {
    if (direct.compared().isEmpty()) {
      facts.add(say("claim.lowers-no-direct"));
    } else if (direct.compared().get().lean() == Compared.Lean.OPEN) {
      facts.add(say("claim.lowers-imprecision"));
    }
  }

  private void bias() {
    int series = selection.rows().size();
    long randomised = count(row -> row.study().design().filter(RANDOMISED::contains).isPresent());
    facts.add(
        say(
            "claim.lowers-bias",
            Map.of(
                "randomised",
                randomised,
                "series",
                series,
                "consecutive",
                count(row -> row.study().consecutive().equals(yes())),
                "independent",
                count(row -> row.study().assessorIndependent().equals(yes())))));
  }

  private static Optional<YesOrNo> yes() {
    return Optional.of(YesOrNo.YES);
  }

  private void patients() {
    int patients = selection.rows().stream().mapToInt(row -> row.speaksOf().orElse(0)).sum();
    if (patients < FEW_PATIENTS) {
      facts.add(
          say("claim.lowers-few-patients", Map.of("patients", patients, "few", FEW_PATIENTS)));
    }
  }

  private void spread(Result result) {
    for (SubgroupsResult.Subgroup group : SynthesisResult.of(result).listOfGroups()) {
      double percent =
          group
              .heterogeneity()
              .iSquaredPercent()
              .orElse(group.heterogeneity().iSquaredPercentFromQ().orElse(0));
      boolean tau =
          group.bayesian().isPresent()
              ? PooledValue.differ(group.heterogeneity())
              : group.heterogeneity().tauSquared().orElse(0) > 0;
      String name =
          Method.vocabulary().find(group.level()).map(Claim::nameOf).orElse(group.level());
      if (percent > MUCH_SPREAD_PERCENT) {
        facts.add(say("claim.lowers-spread", Map.of("method", name)));
      } else if (tau && group.heterogeneity().iSquaredPercent().isEmpty()) {
        facts.add(say("claim.lowers-spread-at-best", Map.of("method", name)));
      }
    }
  }

  private void definitions(boolean shared) {
    if (!selection.alikeDefined()) {
      facts.add(say(shared ? "claim.lowers-definitions" : "claim.lowers-definitions-apart"));
    }
    long silent = count(row -> !row.definition().isStated());
    if (silent > 0 && claim.outcome().isEvent()) {
      facts.add(
          say("claim.lowers-silent", Map.of("silent", silent, "series", selection.rows().size())));
    }
  }

  /** What is said of the series together: words not found in all, clocks that some do not state. */
  private void notes() {
    selection.notes().stream()
        .filter(note -> INDIRECT.contains(note.code()))
        .forEach(note -> facts.add(say("claim.lowers-note", Map.of("note", note.message()))));
  }

  private void followUp() {
    ShortFollowUp.of(claim.outcome(), selection.rows())
        .ifPresent(
            found -> facts.add(say("claim.lowers-follow-up", Map.of("found", found.words()))));
  }

  private void lengths() {
    selection.notes().stream()
        .filter(
            note ->
                note.code().equals(LengthNotes.NOT_SAID)
                    || note.code().equals(LengthNotes.ONLY_IN_RANGE))
        .forEach(note -> facts.add(note.message()));
    if (selection.rowsOnlyOverlapping() > 0) {
      facts.add(
          say(
              "claim.lowers-lengths",
              Map.of(
                  "reaching", selection.rowsOnlyOverlapping(), "series", selection.rows().size())));
    }
  }

  private void smallStudies() {
    long full = count(Lowering::allOrNone);
    if (full > 0) {
      facts.add(
          say("claim.lowers-all-or-none", Map.of("full", full, "series", selection.rows().size())));
    }
    for (Claim.Side side : List.of(claim.a(), claim.b())) {
      long own = count(row -> row.arm().method().principal().equals(side.method()));
      if (own < FEWEST_FOR_SMALL_STUDY_TEST) {
        facts.add(say("claim.lowers-unpublished", Map.of("series", own, "method", side.name())));
      }
    }
  }

  private static boolean allOrNone(SelectedRow row) {
    return row.value() instanceof ReportedValue.Events events
        && events.count().share().filter(share -> share == 0 || share == 1).isPresent();
  }

  /** How many series of means could not be pooled, and why; empty where all could. */
  static Optional<String> notPooled(Claim claim, Answer answer) {
    if (Effect.of(answer.selection().settled()).isFromCounts()) {
      return Optional.empty();
    }
    List<Result.Study> series =
        answer.result().map(result -> SynthesisResult.of(result).studies()).orElse(List.of());
    long zeros = answer.result().map(result -> Blocks.meansOfZero(answer, result)).orElse(0);
    long without = series.stream().filter(one -> one.variance().isEmpty()).count() - zeros;
    List<String> reasons = new ArrayList<>();
    if (without > 0) {
      reasons.add(say("claim.without-sd", Map.of("without", without, "series", series.size())));
    }
    if (zeros > 0) {
      reasons.add(say("claim.means-of-zero", Map.of("zeros", zeros, "series", series.size())));
    }
    return Optional.of(String.join(" ", reasons)).filter(told -> !told.isEmpty());
  }

  private long count(Predicate<SelectedRow> which) {
    return selection.rows().stream().filter(which).count();
  }
}
