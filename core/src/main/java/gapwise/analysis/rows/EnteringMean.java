package gapwise.analysis.rows;

import gapwise.analysis.result.Result;
import gapwise.effect.ArmMean;
import gapwise.effect.FiveNumbers;
import gapwise.effect.Reported;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.selection.Conversions;
import gapwise.selection.SelectedRow;
import gapwise.selection.SpreadBasis;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * With which mean and standard deviation one printed quantity enters a synthesis, by the very steps
 * that fill the rows of a plan and read them. For whoever must see it before anything is pooled.
 *
 * @param mean in the unit in which the outcome is compared; empty where nothing enters
 * @param basis from what the standard deviation comes, where a mean is printed
 * @param fromMedian from what stands beside a median the mean comes; empty where it is printed
 * @param codes of the warnings that the rows of a plan would carry
 */
public record EnteringMean(
    Optional<ArmMean> mean,
    SpreadBasis basis,
    Optional<FiveNumbers.Beside> fromMedian,
    Set<String> codes) {
  private static final String GROUP = "";

  public EnteringMean {
    codes = Set.copyOf(codes);
  }

  /**
   * What a row enters with where numbers that are not printed are worked out.
   *
   * @param row of one group, or of all groups of a study as one
   * @param outcome in whose unit it is compared
   * @param printed of the dimension of that unit
   */
  public static EnteringMean of(SelectedRow row, Outcome outcome, QuantitySummary printed) {
    Map<String, RowValue> cells = new TreeMap<>();
    List<Result.Warning> told = new ArrayList<>();
    new QuantityCells(row, outcome, Conversions.ALL, printed).fill(cells, told);
    Filled filled = new Filled(cells);
    Optional<ArmMean> mean = ArmMean.read(filled, GROUP);
    Set<String> codes = told.stream().map(Result.Warning::code).collect(Collectors.toSet());
    Optional<FiveNumbers.Beside> beside =
        mean.filter(ArmMean::fromMedian)
            .flatMap(one -> FiveNumbers.read(filled, GROUP, one.n()))
            .map(FiveNumbers::beside);
    return new EnteringMean(mean, SpreadBasis.of(row, printed, Conversions.ALL), beside, codes);
  }

  /** Whether what a mean or deviation was worked out from is too lopsided for the way it was. */
  public boolean looksSkewed() {
    return codes.contains("mean-looks-skewed") || mean.filter(ArmMean::looksSkewed).isPresent();
  }

  /** Cells by role, read as those of any row; what is wrong in them leaves the value out. */
  private record Filled(Map<String, RowValue> cells) implements Reported {
    @Override
    public OptionalDouble number(String role) {
      return Optional.ofNullable(cells.get(role))
          .map(RowValue::number)
          .orElse(OptionalDouble.empty());
    }

    @Override
    public void wrong(String role, String code, String message) {}

    @Override
    public void missing(String role) {}

    @Override
    public boolean isBound(String role) {
      return false;
    }
  }
}
