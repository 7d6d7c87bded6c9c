package gapwise.analysis.agreement;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.synthesis.agreement.Kappa;
import java.util.ArrayList;
import java.util.List;

/** Weights of agreement for pairs of ordered categories, as a plan asks for them. */
sealed interface AskedWeights {
  /** As in a plan; {@code custom} for a table. */
  String name();

  /** For a number of categories: 1 on the diagonal, least 0. */
  Kappa.Weights agreement(int categories);

  /** Reads one from a checked plan. */
  static AskedWeights of(JsonNode asked) {
    return asked.isTextual() ? new Named(asked.asText()) : Table.of(asked.get("disagreement"));
  }

  /** By how many categories lie between: {@code none}, {@code linear}, {@code quadratic}. */
  record Named(String name) implements AskedWeights {
    @Override
    public Kappa.Weights agreement(int categories) {
      double farthest = Math.max(1, categories - 1);
      return switch (name) {
        case "linear" -> (i, j) -> 1 - Math.abs(i - j) / farthest;
        case "quadratic" ->
            (i, j) -> {
              double apart = (i - j) / farthest;
              return 1 - apart * apart;
            };
        default -> (i, j) -> i == j ? 1 : 0;
      };
    }
  }

  /**
   * By a table.
   *
   * @param disagreement 0 on the diagonal, above 0 somewhere else
   */
  record Table(List<List<Double>> disagreement) implements AskedWeights {
    public Table {
      disagreement = disagreement.stream().map(List::copyOf).toList();
    }

    private static Table of(JsonNode disagreement) {
      List<List<Double>> rows = new ArrayList<>();
      for (JsonNode row : disagreement) {
        List<Double> cells = new ArrayList<>();
        row.forEach(cell -> cells.add(cell.asDouble()));
        rows.add(cells);
      }
      return new Table(rows);
    }

    @Override
    public String name() {
      return "custom";
    }

    @Override
    public Kappa.Weights agreement(int categories) {
      double largest =
          disagreement.stream()
              .flatMap(List::stream)
              .mapToDouble(Double::doubleValue)
              .max()
              .orElse(0);
      return (i, j) -> 1 - disagreement.get(i).get(j) / largest;
    }
  }
}
