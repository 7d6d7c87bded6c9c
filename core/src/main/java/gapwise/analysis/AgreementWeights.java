package gapwise.analysis;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.synthesis.agreement.Kappa;
import java.util.ArrayList;
import java.util.List;

/**
 * Weights of agreement for pairs of ordered categories.
 *
 * @param name as in a plan; {@code custom} for a table
 * @param agreement 1 on the diagonal, least 0
 */
record AgreementWeights(String name, Kappa.Weights agreement) {
  /**
   * The weights a plan asks for.
   *
   * @param asked the plan's list, checked against its rules
   */
  static List<AgreementWeights> of(JsonNode asked, int categories) {
    List<AgreementWeights> all = new ArrayList<>();
    for (JsonNode one : asked) {
      all.add(one.isTextual() ? named(one.asText(), categories) : table(one.get("disagreement")));
    }
    return all;
  }

  private static AgreementWeights named(String name, int categories) {
    double farthest = Math.max(1, categories - 1);
    return new AgreementWeights(
        name,
        switch (name) {
          case "linear" -> (i, j) -> 1 - Math.abs(i - j) / farthest;
          case "quadratic" ->
              (i, j) -> {
                double apart = (i - j) / farthest;
                return 1 - apart * apart;
              };
          default -> (i, j) -> i == j ? 1 : 0;
        });
  }

  private static AgreementWeights table(JsonNode disagreement) {
    double largest = 0;
    double[][] cells = new double[disagreement.size()][];
    for (int i = 0; i < cells.length; i++) {
      cells[i] = new double[disagreement.get(i).size()];
      for (int j = 0; j < cells[i].length; j++) {
        cells[i][j] = disagreement.get(i).get(j).asDouble();
        largest = Math.max(largest, cells[i][j]);
      }
    }
    double all = largest;
    return new AgreementWeights("custom", (i, j) -> 1 - cells[i][j] / all);
  }
}
