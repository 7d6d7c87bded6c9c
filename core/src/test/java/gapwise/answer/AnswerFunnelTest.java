package gapwise.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.Runner;
import gapwise.analysis.result.Result;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.figure.drawing.AxisWords;
import gapwise.figure.drawing.Medium;
import gapwise.figure.funnel.Funnel;
import gapwise.figure.funnel.FunnelScale;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Invented rows only. */
class AnswerFunnelTest {
  private static final AxisWords AXIS = new AxisWords("odds ratio, log axis", "", "", List.of());

  private static Result result(int studies, boolean asksFunnel) {
    ObjectNode plan = JsonNodeFactory.instance.objectNode().put("measure", "odds-ratio");
    ArrayNode rows = plan.putObject("source").putArray("rows");
    for (int i = 0; i < studies; i++) {
      rows.addObject()
          .put("study", "Invented " + i)
          .put("intervention.events", 2 + i)
          .put("intervention.total", 20 + 8 * i)
          .put("comparator.events", 8 + i)
          .put("comparator.total", 21 + 8 * i);
    }
    plan.putArray("smallStudyEffects")
        .add("egger")
        .add("harbord")
        .addObject()
        .putObject("trim-and-fill")
        .put("side", "right");
    if (asksFunnel) {
      plan.putObject("funnel");
    }
    PlanOutcome outcome = Runner.withoutEvidence().run(plan, Optional.empty());
    return ((PlanOutcome.Done) outcome).result();
  }

  private static Optional<Funnel> funnel(Result result) {
    return AnswerFunnel.of(result, "Invented trials", AXIS, Edition.ofProgram("1"), true);
  }

  @Test
  void aFunnelTellsWhatTheResultTells() {
    Result result = result(12, true);
    Funnel funnel = funnel(result).orElseThrow();
    assertEquals(FunnelScale.LOGARITHM, funnel.scale());
    assertEquals(12, funnel.points().size());
    assertEquals(
        SynthesisResult.of(result).summary().orElseThrow().estimate(),
        funnel.centre().orElseThrow().effect(),
        0);
    assertEquals(3, funnel.contours().orElseThrow().lines().size());
    assertEquals(
        SynthesisResult.of(result).smallStudyEffects().orElseThrow().trimAndFill().get(0).added(),
        funnel.imagined().size());
    assertTrue(funnel.imagined().size() > 0);
    String said =
        SynthesisResult.of(result)
            .smallStudyEffects()
            .orElseThrow()
            .harbord()
            .orElseThrow()
            .sentence();
    assertTrue(funnel.sentences().contains(said));
    assertTrue(funnel.cautions().contains(AnswerFunnel.CAUTION));
    assertTrue(funnel.draw(Medium.PAGE).get(0).svg().contains("Invented 11"));
  }

  @Test
  void aFunnelOfFewSeriesSaysThatNoPatternCanBeRead() {
    Funnel funnel = funnel(result(4, true)).orElseThrow();
    assertTrue(funnel.sentences().get(0).contains("fewer than 10"), funnel.sentences().toString());
  }

  @Test
  void aResultWithoutAFunnelGivesNone() {
    assertTrue(funnel(result(12, false)).isEmpty());
  }
}
