package gapwise.selection;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.OutcomeReport;
import gapwise.evidence.unit.Money;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.problem.Problem;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * In what the costs of rows stand: in one currency, since costs are never pooled across currencies,
 * and in prices of the years that the papers state, which are not brought to one year.
 *
 * @param currency ISO 4217 letters; empty where no row states a currency
 * @param years of the prices, as far as rows state them
 * @param silent rows that state no year
 */
public record Prices(Optional<String> currency, SortedSet<Integer> years, int silent) {
  /** The word of the note on the rows of a cost. */
  static final String CODE = "prices";

  public Prices {
    Objects.requireNonNull(currency, "currency");
    years = Collections.unmodifiableSortedSet(new TreeSet<>(years));
  }

  /** Of the rows of an outcome; empty for what is no cost, or without rows. */
  public static Optional<Prices> of(Outcome outcome, List<SelectedRow> rows) {
    if (outcome.kind() != Outcome.Kind.COST || rows.isEmpty()) {
      return Optional.empty();
    }
    SortedSet<String> letters = new TreeSet<>();
    SortedSet<Integer> years = new TreeSet<>();
    int silent = 0;
    for (SelectedRow row : rows) {
      Optional<Money> money = row.report().flatMap(OutcomeReport::money);
      money.ifPresent(one -> letters.add(one.currency().getCurrencyCode()));
      if (money.isPresent() && money.get().priceYear().isPresent()) {
        years.add(money.get().priceYear().getAsInt());
      } else {
        silent++;
      }
    }
    if (letters.size() > 1) {
      throw new IllegalStateException("costs of several currencies stand together: " + letters);
    }
    return Optional.of(new Prices(letters.stream().findFirst(), years, silent));
  }

  /** What stands behind an amount: the letters of the currency. */
  public String unit() {
    return currency.orElseGet(() -> say("selection.currency-unknown"));
  }

  /** What a reader of the amounts must know. */
  Problem note() {
    return new Problem("", CODE, sentence());
  }

  /** The currency, and of which years the prices are. */
  public String sentence() {
    if (currency.isEmpty()) {
      return say("selection.prices-without-currency");
    }
    Map<String, Object> values = new HashMap<>();
    values.put("currency", currency.get());
    if (years.isEmpty()) {
      return say("selection.prices-without-year", values);
    }
    values.put("from", Integer.toString(years.first()));
    if (years.size() == 1 && silent == 0) {
      return say("selection.prices-of-one-year", values);
    }
    values.put("silent", silent);
    if (years.size() == 1) {
      return say("selection.prices-of-one-known-year", values);
    }
    values.put("to", Integer.toString(years.last()));
    return silent == 0
        ? say("selection.prices-of-years", without(values, "silent"))
        : say("selection.prices-of-some-years", values);
  }

  private static Map<String, Object> without(Map<String, Object> values, String name) {
    Map<String, Object> fewer = new HashMap<>(values);
    fewer.remove(name);
    return fewer;
  }
}
