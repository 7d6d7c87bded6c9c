package gapwise.decision.cost;

import gapwise.numeric.RandomValues;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.TreeMap;

/**
 * What somebody entered, whole or not; {@link CostModel#of} names what is missing.
 *
 * @param currency of all money, such as "EUR"; blank where not entered
 * @param priceYear year of all prices
 * @param amounts by entry
 * @param treatments by code of a method, the cost of its planned operations with what is put in
 * @param utilities worth of a year in each state, up to 1 for full health; all of them or none
 */
public record CostEntries(
    String currency,
    OptionalInt priceYear,
    Map<Entry, Amount> amounts,
    Map<String, Amount> treatments,
    Map<Health, Double> utilities) {
  public CostEntries {
    Objects.requireNonNull(currency, "currency");
    Objects.requireNonNull(priceYear, "priceYear");
    amounts = Map.copyOf(amounts);
    treatments = Map.copyOf(treatments);
    utilities = Map.copyOf(utilities);
  }

  /** Whether every utility is there, so that years can be weighed by their quality. */
  boolean hasUtilities() {
    return utilities.size() == Health.values().length;
  }

  /** The mean of an entry that is there. */
  double mean(Entry entry) {
    return Objects.requireNonNull(amounts.get(entry), entry.code()).mean();
  }

  /** The same with all money drawn once. */
  CostEntries drawn(RandomValues random) {
    Map<Entry, Amount> drawn = new EnumMap<>(Entry.class);
    for (Entry entry : Entry.values()) {
      Amount amount = Objects.requireNonNull(amounts.get(entry), entry.code());
      boolean money = entry.kind() == Entry.Kind.MONEY;
      drawn.put(entry, money ? Amount.known(amount.draw(random)) : amount);
    }
    Map<String, Amount> prices = new TreeMap<>();
    for (Map.Entry<String, Amount> each : new TreeMap<>(treatments).entrySet()) {
      prices.put(each.getKey(), Amount.known(each.getValue().draw(random)));
    }
    return new CostEntries(currency, priceYear, drawn, prices, utilities);
  }
}
