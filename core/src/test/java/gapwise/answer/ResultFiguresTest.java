package gapwise.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.analysis.PlanOutcome;
import gapwise.analysis.Runner;
import gapwise.analysis.result.Result;
import gapwise.figure.Figure;
import gapwise.figure.curve.CurveFigure;
import gapwise.figure.drawing.Medium;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;

/**
 * Figures of results of plans; the table of invented times to union is that of the survival task.
 */
class ResultFiguresTest {
  private static Result run(String plan) {
    try {
      Path folder = Path.of(ResultFiguresTest.class.getResource("/survival").toURI());
      PlanOutcome outcome =
          Runner.withoutEvidence().run(plan.replace('\'', '"'), Optional.of(folder));
      return ((PlanOutcome.Done) outcome).result();
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }

  private static Map<String, Figure> figures(Result result) {
    Edition base = new Edition("test", OptionalLong.of(7), Optional.empty());
    return ResultFigures.of(result, Optional.empty(), base);
  }

  private static Result times(String fields) {
    return run("{'task':'survival','source':{'table':'invented-union-times.csv'}" + fields + "}");
  }

  @Test
  void pooledCurvesAreDrawnAloneWhereAllWouldBeTooMany() {
    Result result = times(",'pooledCurve':{}");
    CurveFigure figure = (CurveFigure) figures(result).get("curves");
    assertEquals(
        List.of("transport", "membrane"), figure.curves().stream().map(c -> c.name()).toList());
    assertTrue(figure.sentences().get(2).startsWith("2 of 10 curves are drawn"));
    // The shares of 46 and 41 limbs still followed at the start, as the table counts them.
    assertEquals(46, figure.curves().get(0).atRisk().get(0).patients());
    assertEquals(41, figure.curves().get(1).atRisk().get(0).patients());
    assertTrue(figure.caption().contains("8 series, 87 patients"), figure.caption());
    // Of transport, pooled in other code (see the test of the survival task): 0.5869... after 6.
    double atSix =
        figure.curves().get(0).steps().stream()
            .filter(step -> step.time() == 6)
            .findFirst()
            .orElseThrow()
            .share();
    assertEquals(0.5869565217391305, atSix, 1e-10);
  }

  @Test
  void aPooledCurveWithoutAGroupIsToldInAWholeSentence() {
    StringBuilder rows = new StringBuilder();
    for (String study : List.of("A", "B")) {
      for (int time = 1; time <= 6; time++) {
        rows.append(rows.isEmpty() ? "" : ",")
            .append("{'study':'" + study + "','time':" + time + ",'event':1}");
      }
    }
    Result result = run("{'task':'survival','source':{'rows':[" + rows + "]},'pooledCurve':{}}");
    String sentence = ((CurveFigure) figures(result).get("curves")).sentences().get(0);
    assertTrue(sentence.startsWith("Half had the event by "), sentence);
    assertTrue(sentence.endsWith(", pooled over 2 studies with 12 patients."), sentence);
  }

  @Test
  void twoPooledCurvesAreToldApartWithoutColour() {
    Figure figure = figures(times(",'pooledCurve':{}")).get("curves");
    String svg = figure.draw(Medium.COLUMN).get(0).svg();
    assertTrue(svg.contains("stroke-dasharray=\"10 5\""), "the second curve is dashed");
    assertTrue(svg.contains("dotted edge"), "and its band has an edge");
  }

  @Test
  void aCurveFallsWhereTheEstimateOfKaplanAndMeierDoes() {
    // By hand: 4 limbs, events at 2 and 5, one last seen at 3: 3/4, then 3/4 * 1/2.
    Result result =
        run(
            "{'task':'survival','source':{'rows':[{'time':2,'event':1},{'time':3,'event':0},"
                + "{'time':5,'event':1},{'time':6,'event':0}]}}");
    CurveFigure figure = (CurveFigure) figures(result).get("curves");
    assertEquals(1, figure.curves().size());
    assertEquals(0.75, figure.curves().get(0).steps().get(0).share(), 1e-15);
    assertEquals(0.375, figure.curves().get(0).steps().get(1).share(), 1e-15);
    assertEquals(List.of(3.0, 6.0), figure.curves().get(0).lastSeen());
  }

  @Test
  void aTableSentWithItsPlanDoesNotClaimToBeOfTheEvidenceBase() {
    Figure figure = figures(times("")).get("curves");
    assertFalse(figure.caption().contains("change 7"), figure.caption());
    assertTrue(figure.caption().contains("Gapwise test"), figure.caption());
  }

  @Test
  void aResultHasAForestAndWhereAskedAFunnel() {
    String rows =
        "'source':{'rows':[{'study':'A','events':9,'total':10},{'study':'B','events':17,"
            + "'total':20},{'study':'C','events':12,'total':15}]}";
    assertEquals(
        List.of("forest"),
        List.copyOf(figures(run("{'measure':'proportion'," + rows + "}")).keySet()));
    Map<String, Figure> both = figures(run("{'measure':'proportion','funnel':{}," + rows + "}"));
    assertEquals(List.of("forest", "funnel"), List.copyOf(both.keySet()));
    assertEquals(3, both.get("funnel").provenance().series().groups());
  }
}
