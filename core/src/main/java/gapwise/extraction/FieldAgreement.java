package gapwise.extraction;

import gapwise.effect.ArmCounts;
import gapwise.effect.Interval;
import gapwise.effect.ProportionInterval;
import gapwise.exchange.TemplateColumn;
import gapwise.numeric.ReferenceDistribution;
import gapwise.synthesis.agreement.IntraclassCorrelation;
import gapwise.synthesis.agreement.Kappa;
import gapwise.synthesis.agreement.LimitsOfAgreement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * How far two people agree on one field before anything is settled, over all rows of all papers
 * that were read apart.
 *
 * @param sheet sheet of the template
 * @param column the field
 * @param papers papers in which anybody filled it
 * @param alike rows in which both filled it alike
 * @param differ rows in which both filled it, and not alike
 * @param oneEmpty rows in which one alone filled it, or which one alone has
 * @param pairs what both filled, the first person's text first
 */
public record FieldAgreement(
    String sheet,
    TemplateColumn column,
    int papers,
    int alike,
    int differ,
    int oneEmpty,
    List<Texts> pairs) {
  private static final double LEVEL = 0.95;

  /**
   * The two-way random form of a single rater: two people out of a team (Shrout and Fleiss 2,1).
   */
  private static final String FORM = "two-way-random-single";

  public FieldAgreement {
    Objects.requireNonNull(sheet, "sheet");
    Objects.requireNonNull(column, "column");
    pairs = List.copyOf(pairs);
  }

  /**
   * What both filled.
   *
   * @param unit in what the number is, by both; empty text where it has none, or two
   */
  public record Texts(String first, String second, String unit) {}

  /** A number with its interval of 95 %, where it has one. */
  public record Measured(double estimate, Optional<Interval> limits) {}

  /** Rows that both filled. */
  public int both() {
    return alike + differ;
  }

  /**
   * The share of rows that both filled alike, of those that both filled (Wilson's interval); empty
   * where there is none.
   */
  public Optional<Measured> share() {
    if (both() == 0) {
      return Optional.empty();
    }
    ArmCounts counts = new ArmCounts(alike, both());
    return Optional.of(
        new Measured(
            (double) alike / both(), Optional.of(ProportionInterval.WILSON.of(counts, LEVEL))));
  }

  /**
   * Cohen's kappa of a field of one word of a list, with the standard error of Fleiss, Cohen and
   * Everitt 1969; empty for other fields, and where chance alone agrees.
   */
  public Optional<Measured> kappa() {
    if (column.choices().isEmpty() || column.several() || pairs.size() < 2) {
      return Optional.empty();
    }
    List<String> words = new ArrayList<>();
    Map<List<Integer>, Integer> cells = new LinkedHashMap<>();
    for (Texts texts : pairs) {
      cells.merge(
          List.of(code(words, texts.first()), code(words, texts.second())), 1, Integer::sum);
    }
    List<Kappa.Pair> coded =
        cells.entrySet().stream()
            .map(
                cell -> new Kappa.Pair(cell.getKey().get(0), cell.getKey().get(1), cell.getValue()))
            .toList();
    // One word alone leaves nothing to agree on beyond chance.
    if (words.size() < 2) {
      return Optional.empty();
    }
    return Kappa.of(words.size(), coded, (one, other) -> one == other ? 1 : 0)
        .filter(kappa -> Double.isFinite(kappa.estimate()))
        .map(
            kappa -> {
              double half =
                  ReferenceDistribution.normal().multiplier(LEVEL) * kappa.standardError();
              return new Measured(
                  kappa.estimate(),
                  // Where nothing varies the formula gives no width, and that is no certainty.
                  Double.isFinite(half) && half > 0
                      ? Optional.of(
                          new Interval(
                              Math.max(-1, kappa.estimate() - half),
                              Math.min(1, kappa.estimate() + half)))
                      : Optional.empty());
            });
  }

  private static int code(List<String> words, String word) {
    if (!words.contains(word)) {
      words.add(word);
    }
    return words.indexOf(word);
  }

  /** The numbers of rows in which both filled one; none where rows are in several units. */
  private List<List<Double>> numbers() {
    List<List<Double>> numbers = new ArrayList<>();
    boolean oneUnit = pairs.stream().map(Texts::unit).distinct().count() == 1;
    if (column.number() && column.choices().isEmpty() && oneUnit) {
      for (Texts texts : pairs) {
        Optional<Double> first = number(texts.first());
        Optional<Double> second = number(texts.second());
        if (first.isPresent() && second.isPresent()) {
          numbers.add(List.of(first.get(), second.get()));
        }
      }
    }
    return numbers;
  }

  private static Optional<Double> number(String text) {
    try {
      return Optional.of(Double.valueOf(text)).filter(Double::isFinite);
    } catch (NumberFormatException none) {
      return Optional.empty();
    }
  }

  /**
   * The intraclass correlation of a field of numbers; empty for other fields, for fewer than two
   * rows, for rows in several units, and where nothing varies.
   */
  public Optional<Measured> correlation() {
    List<List<Double>> numbers = numbers();
    if (numbers.size() < 2) {
      return Optional.empty();
    }
    return IntraclassCorrelation.of(numbers, LEVEL).forms().stream()
        .filter(form -> form.name().equals(FORM))
        .findFirst()
        .map(form -> new Measured(form.estimate(), form.limits()));
  }

  /** Between which values most differences lie, first less second; of two rows or more. */
  public Optional<LimitsOfAgreement> limits() {
    List<Double> differences = numbers().stream().map(both -> both.get(0) - both.get(1)).toList();
    return differences.size() < 2
        ? Optional.empty()
        : Optional.of(
            LimitsOfAgreement.of(differences, ReferenceDistribution.normal().multiplier(LEVEL)));
  }
}
