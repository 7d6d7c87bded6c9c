package gapwise.desk;

import gapwise.exchange.Template;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * A count that a printed percentage and its total stand for: every whole number whose share is
 * printed so. Papers cut digits off as well as round them, so that a share may be up to one unit of
 * the last digit away (common practice, no source), as the import allows.
 *
 * @param row number of the row
 * @param column the column of the count
 * @param flag the column that says that it was counted back
 * @param percent as typed
 * @param total of how many
 * @param counts the whole numbers that it may stand for, at least one
 */
public record CountedBack(
    int row, String column, String flag, String percent, int total, List<Integer> counts) {
  /** Of more, the percentage says too little to choose. */
  private static final int MOST_COUNTS = 5;

  private static final List<String> TRAITS = List.of("infected", "male", "smokers", "diabetics");
  private static final Pattern TOTAL = Pattern.compile("[1-9]\\d{0,5}");
  private static final Pattern PERCENT = Pattern.compile("\\d{1,3}(?:[.,]\\d{1,4})?");

  public CountedBack {
    counts = List.copyOf(counts);
  }

  /** All that a draft leaves to be counted back, in the order of its rows. */
  public static List<CountedBack> of(Draft draft) {
    List<CountedBack> all = new ArrayList<>();
    for (DraftRow row : draft.rows(Template.ARMS)) {
      for (String trait : TRAITS) {
        String total =
            row.text(trait + "_of").isEmpty() ? row.text("patients") : row.text(trait + "_of");
        of(row, trait, trait + "_counted_back", row.text(trait + "_percent"), total)
            .ifPresent(all::add);
      }
    }
    for (DraftRow row : draft.rows(Template.OUTCOMES)) {
      of(row, "events", "events_counted_back", row.text("percent"), row.text("total"))
          .ifPresent(all::add);
    }
    return List.copyOf(all);
  }

  private static Optional<CountedBack> of(
      DraftRow row, String column, String flag, String percent, String total) {
    boolean asked =
        row.text(column).isEmpty()
            && PERCENT.matcher(percent).matches()
            && TOTAL.matcher(total).matches();
    if (!asked) {
      return Optional.empty();
    }
    int of = Integer.parseInt(total);
    List<Integer> counts = counts(new BigDecimal(percent.replace(',', '.')), of);
    return counts.isEmpty() || counts.size() > MOST_COUNTS
        ? Optional.empty()
        : Optional.of(new CountedBack(row.number(), column, flag, percent, of, counts));
  }

  private static List<Integer> counts(BigDecimal percent, int total) {
    BigDecimal unit = BigDecimal.ONE.movePointLeft(percent.scale());
    int near = percent.multiply(BigDecimal.valueOf(total)).movePointLeft(2).intValue();
    int reach = (int) Math.ceil(unit.doubleValue() * total / 100) + 1;
    List<Integer> counts = new ArrayList<>();
    for (int count = Math.max(0, near - reach); count <= Math.min(total, near + reach); count++) {
      if (share(count, total).subtract(percent).abs().compareTo(unit) < 0) {
        counts.add(count);
      }
    }
    return counts;
  }

  private static BigDecimal share(int count, int total) {
    return BigDecimal.valueOf(100L * count)
        .divide(BigDecimal.valueOf(total), 8, RoundingMode.HALF_UP);
  }

  /** The share of one of the counts in percent, to one digit more than is printed. */
  public String share(int count) {
    int decimals = new BigDecimal(percent.replace(',', '.')).scale() + 1;
    return share(count, total).setScale(decimals, RoundingMode.HALF_UP).toPlainString();
  }

  /** The draft with one of the counts, and the flag that it was counted back. */
  public Draft taken(Draft draft, int count) {
    return draft
        .withCell(row, column, Integer.toString(count), Optional.empty())
        .withCell(row, flag, "yes", Optional.empty());
  }
}
