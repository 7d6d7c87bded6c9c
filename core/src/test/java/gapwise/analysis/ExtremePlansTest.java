package gapwise.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.plan.FarNumbers;
import gapwise.analysis.rows.SourceReader;
import gapwise.analysis.rows.Sources;
import gapwise.analysis.testing.Plans;
import gapwise.budget.Budget;
import gapwise.budget.Limit;
import gapwise.budget.Work;
import gapwise.budget.WorkStoppedException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleConsumer;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Numbers at the ends of what a double holds, in any cell and any setting of any plan: the answer
 * is a result of finite numbers or a refusal, never an exception and never a NaN in words.
 */
class ExtremePlansTest {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();

  private static final double[] EXTREMES = {
    Double.MAX_VALUE,
    -Double.MAX_VALUE,
    1e308,
    -1e308,
    1e-308,
    Double.MIN_VALUE,
    1e300,
    1e-300,
    1e200,
    1e-200,
    1e150,
    1e-150,
    1e100,
    1e77,
    1e-77,
    1e40,
    1e22,
    0x1p63,
    1e16,
    1e14,
    1e9,
    -1e9,
    1e-6,
    1e-9,
    1e-16,
    -1e-16,
    0,
    -0.0,
    1,
    -1,
    0.999999,
    0x1p31
  };

  /** Turns of each plan; the same every time. */
  private static final int TURNS = 60;

  private static String rows(int count, String cells) {
    return IntStream.range(0, count)
        .mapToObj(
            i ->
                "{"
                    + cells.replace("#", "" + (i + 1)).replace("@", "" + (char) ('a' + i % 2))
                    + "}")
        .collect(Collectors.joining(",", "'source':{'rows':[", "]}"));
  }

  static Stream<String> plans() {
    String effects =
        rows(7, "'study':'s#','effect':0.#,'standardError':0.3,'x':#,'g':'@','k':'c@'");
    String counts = rows(6, "'study':'s#','events':#,'total':20,'g':'@'");
    String tables =
        rows(
            6,
            "'study':'s#','intervention.events':#,'intervention.total':20,"
                + "'comparator.events':3,'comparator.total':15");
    String means =
        rows(
            5,
            "'study':'s#','intervention.n':1#,'intervention.mean':4,'intervention.sd':2,"
                + "'comparator.n':12,'comparator.mean':#,'comparator.sd':1.5");
    String rates = rows(5, "'study':'s#','events':#,'personTime':12#.5");
    String medians = rows(5, "'study':'s#','n':2#,'median':5,'q1':4,'q3':7,'min':2,'max':1#");
    String arms =
        rows(8, "'study':'s@','treatment':'t#','events':#,'total':20,'mean':#,'sd':2,'n':9");
    return Stream.of(
            effects
                + ",'measure':'reported-effect','influence':true,'cumulativeBy':'x',"
                + "'subgroup':'g','smallStudyEffects':['egger','trim-and-fill'],'places':[0.5]",
            effects
                + ",'measure':'reported-effect','interval':'profile-likelihood',"
                + "'tauSquaredInterval':'profile-likelihood','influence':true",
            effects + ",'measure':'reported-effect','betweenStudyVariance':'paule-mandel'",
            effects + ",'measure':'reported-effect','betweenStudyVariance':'sidik-jonkman'",
            effects
                + ",'measure':'reported-effect','model':'bayesian','probabilities':[{'above':1}],"
                + "'prior':{'mean':{'normal':[0,4]},'tau':{'halfCauchy':0.5}},"
                + "'priorSensitivity':[{'halfNormal':1},{'uniform':[0,5]}]",
            effects
                + ",'measure':'reported-effect','moderators':['x',{'product':['x','g']}],"
                + "'predictions':[{'x':3},{'column':'x','from':0,'to':5,'points':3}],"
                + "'cluster':'k','robustVariance':'cr1','influence':true",
            effects
                + ",'measure':'reported-effect','model':'three-level','cluster':'k',"
                + "'influence':true",
            counts + ",'influence':true,'subgroup':'g','smallStudyEffects':['egger','begg']",
            counts + ",'scale':'double-arcsine','backTransformN':20,'backTransformAlsoWith':[5,50]",
            counts + ",'model':'exact-likelihood','predictionInterval':'normal','influence':true",
            counts + ",'model':'bayesian'",
            counts
                + ",'task':'interval','pooledCounts':true,'methods':['clopper-pearson','mid-p',"
                + "'wilson-continuity-corrected','jeffreys','likelihood-ratio']",
            counts
                + ",'task':'multiverse','list':true,'vary':{'leaveOneOut':true,"
                + "'scale':['logit','double-arcsine','raw'],'interval':['hartung-knapp',"
                + "'profile-likelihood'],'subsets':[{'column':'total','atLeast':[2]}]}",
            tables + ",'measure':'odds-ratio','influence':true",
            tables + ",'measure':'risk-ratio','model':'common-effect','pooling':'mantel-haenszel'",
            tables + ",'measure':'odds-ratio','model':'exact-likelihood'",
            tables
                + ",'measure':'odds-ratio','model':'exact-likelihood','likelihood':'unconditional'",
            means + ",'measure':'mean-difference'",
            means + ",'measure':'standardised-mean-difference','influence':true",
            means + ",'measure':'ratio-of-means'",
            rates + ",'measure':'incidence-rate','influence':true",
            rates + ",'measure':'incidence-rate','scale':'square-root'",
            rates + ",'measure':'incidence-rate','model':'exact-likelihood'",
            rates
                + ",'task':'interval','measure':'incidence-rate','methods':['exact-poisson'],"
                + "'pooledCounts':true",
            medians + ",'measure':'mean'",
            medians + ",'task':'convert','methods':['wan-2014','luo-2018','bland-2015']",
            arms + ",'model':'network','measure':'odds-ratio','rankingDraws':50",
            arms + ",'model':'network','measure':'standardised-mean-difference','rankingDraws':50",
            rows(6, "'study':'s#','treatment':'a','against':'@x','effect':0.#,'standardError':1")
                + ",'model':'network','measure':'reported-effect','rankingDraws':50",
            rows(9, "'a':#,'b':2#")
                + ",'task':'agreement','raters':['a','b'],"
                + "'statistics':['intraclass-correlation','limits-of-agreement']",
            rows(6, "'rater1':'a','rater2':'@','count':#")
                + ",'task':'agreement','statistics':['kappa'],'categories':['a','b'],"
                + "'weights':['none',{'disagreement':[[0,1],[2,0]]}]",
            rows(12, "'study':'s','group':'@','time':#,'event':1")
                + ",'task':'survival','horizon':5,'survivalAt':[3],"
                + "'compare':{'group':'a','against':'b'},'pooledCurve':{'times':[2,5]}",
            rows(6, "'time':#,'survival':0.5")
                + ",'task':'reconstruct-curve','horizon':4,"
                + "'groups':{'a':{'patients':30,'events':15,'median':3}},"
                + "'numbersAtRisk':{'rows':[{'time':0,'atRisk':30},{'time':3,'atRisk':20}]}",
            rows(12, "'study':'s@','event':1,'moderator':#,'value':2#")
                + ",'task':'patients-with-summaries','measure':'mean','centre':3,'summaries':"
                + "{'rows':[{'study':'t','mean':24,'sd':2,'n':20,'moderator':4}]}",
            "'task':'trial','measure':'mean','comparator':5,'intervention':6,'standardDeviation':2",
            "'task':'trial','measure':'proportion','comparator':0.5,'intervention':0.7,'power':0.9")
        .map(plan -> "{" + plan.replace('\'', '"') + "}");
  }

  @ParameterizedTest
  @MethodSource("plans")
  void anyNumberInAnyPlaceGivesFiniteNumbersOrARefusal(String text) throws Exception {
    JsonNode plan = MAPPER.readTree(text);
    answer(plan);
    Random random = new Random(20261128);
    for (int turn = 0; turn < TURNS; turn++) {
      ObjectNode changed = plan.deepCopy();
      List<DoubleConsumer> places = places(changed);
      int changes = 1 + (turn % 4 == 3 ? random.nextInt(places.size()) : random.nextInt(3));
      for (int i = 0; i < changes; i++) {
        places.get(random.nextInt(places.size())).accept(EXTREMES[random.nextInt(EXTREMES.length)]);
      }
      answer(changed);
    }
  }

  /** Where a plan has numbers. */
  private static List<DoubleConsumer> places(JsonNode node) {
    List<DoubleConsumer> places = new ArrayList<>();
    if (node instanceof ObjectNode object) {
      for (Iterator<Map.Entry<String, JsonNode>> all = object.fields(); all.hasNext(); ) {
        Map.Entry<String, JsonNode> field = all.next();
        if (field.getValue().isNumber()) {
          places.add(number -> object.put(field.getKey(), number));
        }
        places.addAll(places(field.getValue()));
      }
    } else if (node instanceof ArrayNode list) {
      for (int i = 0; i < list.size(); i++) {
        int at = i;
        if (list.get(i).isNumber()) {
          places.add(number -> list.set(at, list.numberNode(number)));
        }
        places.addAll(places(list.get(i)));
      }
    }
    return places;
  }

  private static void answer(JsonNode plan) {
    PlanOutcome outcome;
    try {
      outcome =
          Work.within(Budget.STANDARD.with(Limit.SECONDS, 60))
              .join(() -> Runner.withoutEvidence().run(plan.toString(), Optional.empty()));
    } catch (WorkStoppedException slow) {
      throw new AssertionError("takes long: " + plan, slow);
    } catch (RuntimeException trace) {
      throw new AssertionError("no answer to " + plan, trace);
    }
    String json = outcome.json().toString();
    assertFalse(json.contains("NaN") || json.contains("Infinity"), () -> plan + " gives " + json);
  }

  @ParameterizedTest
  @ValueSource(strings = {"1e308", "1.7976931348623157e308"})
  void personTimeThatOverflowsInASumIsRefusedAtItsRow(String time) {
    String plan =
        "{'task':'interval','measure':'incidence-rate','methods':['exact-poisson'],"
            + "'pooledCounts':true,'source':{'rows':[{'events':1,'personTime':10},"
            + "{'events':2,'personTime':"
            + time
            + "},{'events':2,'personTime':"
            + time
            + "}]}}";
    assertEquals(
        List.of("row 2, column personTime number-out-of-range"),
        Plans.problems(Runner.withoutEvidence().run(plan.replace('\'', '"'), Optional.empty())));
  }

  @Test
  void aRateOfNearlyNothingKeepsItsExactLimits() {
    // One event: the limits over the time are -ln(0.975) and 5.571643390938898 (Garwood 1936).
    String plan =
        "{'task':'interval','measure':'incidence-rate','methods':['exact-poisson'],"
            + "'source':{'rows':[{'events':1,'personTime':1e308}]}}";
    JsonNode limits =
        Runner.withoutEvidence()
            .run(plan.replace('\'', '"'), Optional.empty())
            .json()
            .at("/intervals/0/methods/0");
    assertEquals(-Math.log(0.975) / 1e308, limits.get("lower").asDouble(), 1e-322);
    assertEquals(5.571643390938898 / 1e308, limits.get("upper").asDouble(), 1e-321);
  }

  @Test
  void aFaultWithoutAFarNumberIsNotCalledThePersons() {
    assertTrue(
        FarNumbers.in(
                PlanReader.read(plainPlan()),
                new SourceReader(Optional.empty(), Optional.empty())
                    .read(Sources.of(plainPlan()), "proportion"))
            .isEmpty());
  }

  private static ObjectNode plainPlan() {
    ArrayNode rows = Plans.rows();
    Plans.row(rows, "events", 1e8, "total", 1e9);
    return Plans.on(rows);
  }
}
