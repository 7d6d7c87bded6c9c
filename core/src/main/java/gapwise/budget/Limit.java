package gapwise.budget;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What is limited, with the most that a request may ask for. The numbers are ours: some ten times
 * the largest analysis of this trade that we know of, and low enough that two cores and one
 * gigabyte serve it.
 */
public enum Limit {
  /** Rows of data of one plan. */
  ROWS(100_000, "rows of data"),
  /** Columns of one table, or fields of one part of a plan. */
  COLUMNS(1_000, "columns or fields"),
  /** Cells and settings of one plan, all together. */
  CELLS(1_000_000, "values in all"),
  /** Entries of one list of a plan, other than its rows. */
  ENTRIES(10_000, "entries in one list"),
  /** Studies of one plan. */
  STUDIES(60_000, "studies"),
  /** Treatments of one network. */
  TREATMENTS(100, "treatments"),
  /** Categories of one column that is split by its words, or of one rating. */
  CATEGORIES(200, "categories"),
  /** Terms of one regression, the intercept among them. */
  TERMS(100, "terms of a regression"),
  /** Letters of one text that is shown. */
  LETTERS(32_767, "letters in one text"),
  /** Random draws, permutations and resamples of one plan. */
  DRAWS(1_000_000, "random draws"),
  /** Points, patients or other items that one setting makes us compute one by one. */
  ITEMS(200_000, "items"),
  /** Pixels of one picture. */
  PIXELS(100_000_000, "pixels"),
  /** Seconds of computing for one request. */
  SECONDS(20, "seconds of computing");

  private final long standard;
  private final String words;

  Limit(long standard, String words) {
    this.standard = standard;
    this.words = words;
  }

  /** The limit as the command line names it. */
  public String code() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The most that a request may ask for. */
  public long standard() {
    return standard;
  }

  /** What is counted, as a plural such as "rows of data". */
  public String words() {
    return words;
  }

  /** The limit of this code. */
  public static Optional<Limit> of(String code) {
    return Arrays.stream(values()).filter(limit -> limit.code().equals(code)).findFirst();
  }

  /** Every code, in order. */
  public static List<String> codes() {
    return Arrays.stream(values()).map(Limit::code).toList();
  }
}
