package gapwise.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.analysis.smallstudy.SmallStudyNotes;
import gapwise.problem.Problem;
import gapwise.synthesis.smallstudy.Caution;
import gapwise.synthesis.smallstudy.Refusal;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What a funnel says of tests is what the warnings of the result say, as sentences. */
class FunnelWordsTest {
  private static final String NO_TEST = "No test of unevenness: ";

  private static List<Refusal> refusals() {
    return List.of(
        new Refusal.TooRare(6, 11, false),
        new Refusal.TooRare(6, 11, true),
        new Refusal.NotForMeasure(),
        new Refusal.AllAlike());
  }

  private static List<Caution> cautions() {
    return List.of(
        new Caution.FewFilled(5),
        new Caution.ErrorFollowsEffect(false),
        new Caution.ErrorFollowsEffect(true),
        new Caution.SimilarSize(),
        new Caution.Heterogeneous(60, false),
        new Caution.Heterogeneous(92, true));
  }

  @ParameterizedTest
  @MethodSource("refusals")
  void everyReasonAgainstATestIsToldWithItsNumbers(Refusal refusal) {
    SmallStudyNotes notes = new SmallStudyNotes(List.of(refusal), List.of());
    assertEquals(List.of(NO_TEST + refusal.problem().message() + "."), FunnelWords.refusals(notes));
    assertEquals(List.of(), FunnelWords.against(notes));
  }

  @Test
  void whyNothingCanBeComputedIsLeftToTheWarnings() {
    Problem why = new Problem("", "zero-variance", "a study has no size");
    SmallStudyNotes notes = new SmallStudyNotes(List.of(new Refusal.NotComputable(why)), List.of());
    assertEquals(List.of(), FunnelWords.refusals(notes));
  }

  @ParameterizedTest
  @MethodSource("cautions")
  void everyCautionIsASentenceWithItsNumbers(Caution caution) {
    SmallStudyNotes notes = new SmallStudyNotes(List.of(), List.of(caution));
    boolean ofImagined = caution instanceof Caution.FewFilled;
    List<String> told = ofImagined ? FunnelWords.refusals(notes) : FunnelWords.against(notes);
    String message = caution.problem().message();
    assertEquals(1, told.size());
    assertTrue(Character.isUpperCase(told.get(0).charAt(0)), told::toString);
    assertEquals(message.substring(1) + ".", told.get(0).substring(1));
    assertEquals(List.of(), ofImagined ? FunnelWords.against(notes) : FunnelWords.refusals(notes));
  }

  @Test
  void aTestOfFewStudiesIsNotShownAndNothingIsSaidAgainstIt() {
    // Sterne et al., BMJ 2011;343:d4002: at least ten studies.
    SmallStudyNotes notes =
        new SmallStudyNotes(
            List.of(), List.of(new Caution.FewTested(4), new Caution.Heterogeneous(92, false)));
    List<String> told = FunnelWords.refusals(notes);
    assertEquals(1, told.size());
    assertTrue(told.get(0).startsWith(NO_TEST + "4 studies are fewer than the 10"), told::toString);
    assertEquals(List.of(), FunnelWords.against(notes));
  }

  @Test
  void everyKindOfReasonIsAmongThem() {
    Set<Class<?>> seen = refusals().stream().map(Object::getClass).collect(Collectors.toSet());
    seen.add(Refusal.NotComputable.class);
    assertEquals(Set.of(Refusal.class.getPermittedSubclasses()), seen);
    assertEquals(
        Set.of(Caution.class.getPermittedSubclasses()),
        Stream.concat(cautions().stream(), Stream.of(new Caution.FewTested(4)))
            .map(Object::getClass)
            .collect(Collectors.toSet()));
  }
}
