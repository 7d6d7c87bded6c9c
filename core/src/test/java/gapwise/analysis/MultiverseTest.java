package gapwise.analysis;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * One body of evidence analysed in many ways. What an analysis finds is held against the plan of
 * that analysis alone, whose numbers are held against published ones elsewhere.
 */
class MultiverseTest {
  private static final String[] RISK = {"low", "low", "high", "some", "low", ""};

  static ArrayNode invented(int studies, long seed) {
    Random random = new Random(seed);
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < studies; i++) {
      int total = 5 + random.nextInt(56);
      int events = 0;
      for (int j = 0; j < total; j++) {
        events += random.nextDouble() < 0.85 ? 1 : 0;
      }
      Plans.row(rows, "events", i == 1 ? total : events, "total", total, "months", 6 + 3 * (i % 7));
      ((ObjectNode) rows.get(i)).put("risk", RISK[i % RISK.length]);
    }
    return rows;
  }

  static ObjectNode plan(ArrayNode rows, String more) {
    ObjectNode plan = Plans.on(rows, "task", "multiverse");
    plan.setAll((ObjectNode) PlanText.parse("{" + more.replace('\'', '"') + "}"));
    return plan;
  }

  private static final String ALL =
      "'threshold':0.8,'list':true,'vary':{'model':['random-effects','common-effect'],"
          + "'scale':['logit','arcsine','double-arcsine','raw'],'zeroCells':[{},{'to':'all'},"
          + "{'to':'all-if-any-zero','add':0.25}],"
          + "'betweenStudyVariance':['restricted-maximum-likelihood','sidik-jonkman','hedges'],"
          + "'interval':['hartung-knapp','normal','profile-likelihood'],"
          + "'subsets':[{'column':'risk','only':[['low'],['low','some']],'without':[['high']]},"
          + "{'column':'months','atLeast':[9,18]}],'leaveOneOut':true}";

  @Test
  void smoke() {
    JsonNode r = Plans.result(plan(invented(12, 5), ALL));
    ((ObjectNode) r.get("multiverse")).remove("list");
    System.out.println(r.get("multiverse").toPrettyString());
    System.out.println(r.get("warnings").toPrettyString());
  }
}
