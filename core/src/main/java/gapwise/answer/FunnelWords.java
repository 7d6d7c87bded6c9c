package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.smallstudy.SmallStudyNotes;
import gapwise.synthesis.smallstudy.Caution;
import gapwise.synthesis.smallstudy.Refusal;
import gapwise.synthesis.smallstudy.SmallStudyData;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** What must be known of the tests of a funnel, in sentences. */
final class FunnelWords {
  private FunnelWords() {}

  /** Why there is no test, and how far imagined series may be read; what is not told is left. */
  static List<String> refusals(SmallStudyNotes notes) {
    return Stream.concat(
            notes.refusals().stream().flatMap(refusal -> told(refusal).stream()),
            notes.cautions().stream().filter(FunnelWords::isOfFew).map(FunnelWords::told))
        .toList();
  }

  /** What speaks against a test that was made. */
  static List<String> against(SmallStudyNotes notes) {
    if (notes.cautions().stream().anyMatch(Caution.FewTested.class::isInstance)) {
      // The test is not shown, so nothing needs to be said against it.
      return List.of();
    }
    return notes.cautions().stream()
        .filter(caution -> !isOfFew(caution))
        .map(FunnelWords::told)
        .toList();
  }

  private static boolean isOfFew(Caution caution) {
    return caution instanceof Caution.FewFilled || caution instanceof Caution.FewTested;
  }

  /** Where nothing can be computed at all, the warnings of the result say why. */
  private static Optional<String> told(Refusal refusal) {
    if (refusal instanceof Refusal.TooRare rare) {
      return Optional.of(
          say(
              rare.counted() ? "funnel.no-test-rare-counted" : "funnel.no-test-rare",
              Map.of("rare", rare.atBound(), "studies", rare.studies())));
    }
    if (refusal instanceof Refusal.NotForMeasure) {
      return Optional.of(say("funnel.no-test-for-measure"));
    }
    return refusal instanceof Refusal.AllAlike
        ? Optional.of(say("funnel.no-test-alike"))
        : Optional.empty();
  }

  private static String told(Caution caution) {
    if (caution instanceof Caution.FewTested few) {
      return say(
          "funnel.no-test-few", Map.of("studies", few.studies(), "fewest", SmallStudyData.FEWEST));
    }
    if (caution instanceof Caution.FewFilled few) {
      return say(
          "funnel.few-filled", Map.of("studies", few.studies(), "fewest", SmallStudyData.FEWEST));
    }
    if (caution instanceof Caution.ErrorFollowsEffect follows) {
      return say(
          follows.counted()
              ? "funnel.error-follows-effect-counted"
              : "funnel.error-follows-effect");
    }
    if (caution instanceof Caution.SimilarSize) {
      return say("funnel.similar-size", Map.of("ratio", Caution.SimilarSize.LEAST_RATIO));
    }
    Caution.Heterogeneous heterogeneous = (Caution.Heterogeneous) caution;
    return say(
        heterogeneous.filled() ? "funnel.heterogeneous-filled" : "funnel.heterogeneous",
        Map.of("percent", heterogeneous.iSquaredPercent()));
  }
}
