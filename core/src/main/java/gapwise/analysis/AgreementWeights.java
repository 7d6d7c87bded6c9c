package gapwise.analysis;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;

/**
 * Weights of agreement for pairs of ordered categories.
 *
 * @param name as in a plan; {@code custom} for a table
 * @param agreement 1 on the diagonal, least 0
 */
record AgreementWeights(String name, List<List<Double>> agreement) {
  AgreementWeights {
    agreement = agreement.stream().map(List::copyOf).toList();
  }

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
    List<List<Double>> weights = new ArrayList<>();
    for (int i = 0; i < categories; i++) {
      List<Double> row = new ArrayList<>();
      for (int j = 0; j < categories; j++) {
        double apart = categories == 1 ? 0 : Math.abs(i - j) / (categories - 1.0);
        row.add(
            switch (name) {
              case "linear" -> 1 - apart;
              case "quadratic" -> 1 - apart * apart;
              default -> i == j ? 1.0 : 0.0;
            });
      }
      weights.add(row);
    }
    return new AgreementWeights(name, weights);
  }

  private static AgreementWeights table(JsonNode disagreement) {
    double largest = 0;
    for (JsonNode row : disagreement) {
      for (JsonNode cell : row) {
        largest = Math.max(largest, cell.asDouble());
      }
    }
    List<List<Double>> weights = new ArrayList<>();
    for (JsonNode row : disagreement) {
      List<Double> one = new ArrayList<>();
      for (JsonNode cell : row) {
        one.add(1 - cell.asDouble() / largest);
      }
      weights.add(one);
    }
    return new AgreementWeights("custom", weights);
  }
}
