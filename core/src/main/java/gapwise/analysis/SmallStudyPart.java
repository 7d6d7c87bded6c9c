package gapwise.analysis;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.effect.StudyData;
import gapwise.synthesis.smallstudy.Cautions;
import gapwise.synthesis.smallstudy.Finding;
import gapwise.synthesis.smallstudy.SmallStudyData;
import gapwise.synthesis.smallstudy.SmallStudyTest;
import gapwise.synthesis.smallstudy.SmallStudyTests;
import gapwise.synthesis.smallstudy.TrimAndFill;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Tests for small-study effects, and trim and fill. */
final class SmallStudyPart implements SynthesisPart {
  @Override
  public boolean asked(SynthesisPlan plan) {
    return !plan.json().path("smallStudyEffects").isEmpty();
  }

  @Override
  public <D extends StudyData> void add(
      Synthesis<D> synthesis, ResultBuilder result, List<Result.Warning> warnings) {
    SmallStudyData data = SmallStudyRows.of(synthesis, warnings);
    SmallStudyFindings findings = new SmallStudyFindings();
    List<SmallStudyTest> made = new ArrayList<>();
    for (SmallStudyTest test : tests(synthesis.plan().json().get("smallStudyEffects"))) {
      Finding finding = test.find(data);
      findings.put(test, finding);
      if (!(finding instanceof Finding.Refused)) {
        made.add(test);
      }
    }
    warnings.addAll(findings.refusals());
    warnings.addAll(StudyWarnings.of(Cautions.of(data, made)));
    if (!findings.result().isEmpty()) {
      result.smallStudyEffects(findings.result());
    }
  }

  /** The tests asked for, each once, in the order asked. */
  static List<SmallStudyTest> tests(JsonNode asked) {
    Map<SmallStudyTest, Boolean> tests = new LinkedHashMap<>();
    for (JsonNode one : asked) {
      tests.put(
          one.isTextual()
              ? SmallStudyTests.named(one.asText()).orElseThrow()
              : trimAndFill(one.get("trim-and-fill")),
          true);
    }
    return List.copyOf(tests.keySet());
  }

  private static TrimAndFill trimAndFill(JsonNode settings) {
    return new TrimAndFill(
        TrimAndFill.Estimator.valueOf(settings.get("estimator").asText()),
        settings.get("side").asText().equals("left")
            ? TrimAndFill.Side.LEFT
            : TrimAndFill.Side.RIGHT,
        settings.get("model").asText().equals("random-effects"));
  }
}
