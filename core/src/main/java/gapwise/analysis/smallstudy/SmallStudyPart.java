package gapwise.analysis.smallstudy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.pooling.Synthesis;
import gapwise.analysis.result.Result;
import gapwise.effect.StudyData;
import gapwise.synthesis.smallstudy.AsymmetryFinding;
import gapwise.synthesis.smallstudy.Caution;
import gapwise.synthesis.smallstudy.Cautions;
import gapwise.synthesis.smallstudy.SmallStudyData;
import gapwise.synthesis.smallstudy.SmallStudyTest;
import gapwise.synthesis.smallstudy.SmallStudyTests;
import gapwise.synthesis.smallstudy.TrimAndFill;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Tests for small-study effects, and trim and fill.
 *
 * @param tests each once, in the order asked; none if none is asked for
 */
public record SmallStudyPart(List<SmallStudyTest> tests) {
  public SmallStudyPart {
    tests = List.copyOf(tests);
  }

  /** What a checked plan asks. */
  public static SmallStudyPart of(ObjectNode full) {
    Set<SmallStudyTest> tests = new LinkedHashSet<>();
    for (JsonNode one : full.path("smallStudyEffects")) {
      tests.add(
          one.isTextual()
              ? SmallStudyTests.named(one.asText()).orElseThrow()
              : trimAndFill(one.get("trim-and-fill")));
    }
    return new SmallStudyPart(List.copyOf(tests));
  }

  private static TrimAndFill trimAndFill(JsonNode settings) {
    return new TrimAndFill(
        TrimAndFill.Estimator.valueOf(settings.get("estimator").asText()),
        settings.get("side").asText().equals("left")
            ? TrimAndFill.Side.LEFT
            : TrimAndFill.Side.RIGHT,
        settings.get("model").asText().equals("random-effects"));
  }

  /**
   * What came of the tests.
   *
   * @param result empty where none is asked for or all are refused
   * @param notes why some were not made, and what speaks against the others
   */
  public record Made(Optional<SmallStudyEffectsResult> result, SmallStudyNotes notes) {}

  /**
   * Makes the tests.
   *
   * @param warnings takes what a reader must know
   */
  public <D extends StudyData> Made of(Synthesis<D> synthesis, List<Result.Warning> warnings) {
    if (tests.isEmpty()) {
      return new Made(Optional.empty(), SmallStudyNotes.NONE);
    }
    SmallStudyData data = SmallStudyRows.of(synthesis, warnings);
    SmallStudyFindings findings = new SmallStudyFindings();
    List<SmallStudyTest> made = new ArrayList<>();
    for (SmallStudyTest test : tests) {
      AsymmetryFinding finding = test.find(data);
      findings.put(test, finding);
      if (!(finding instanceof AsymmetryFinding.Refused)) {
        made.add(test);
      }
    }
    warnings.addAll(findings.refusals());
    List<Caution> cautions = Cautions.of(data, made);
    cautions.forEach(one -> warnings.add(Result.Warning.of(one.problem())));
    SmallStudyEffectsResult result = findings.result();
    return new Made(
        result.isEmpty() ? Optional.empty() : Optional.of(result),
        new SmallStudyNotes(findings.reasons(), cautions));
  }
}
