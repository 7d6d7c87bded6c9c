package gapwise.evidence.unit;

import java.util.Currency;
import java.util.Objects;
import java.util.OptionalInt;

/**
 * What makes a cost comparable.
 *
 * @param currency ISO 4217
 * @param priceYear year of the prices; empty where the paper does not say
 */
public record Money(Currency currency, OptionalInt priceYear) {
  public Money {
    Objects.requireNonNull(currency, "currency");
    Objects.requireNonNull(priceYear, "priceYear");
  }
}
