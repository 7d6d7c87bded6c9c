package gapwise.wording;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.unit.Money;
import java.util.Map;

/** Currency and price year of a cost in words. */
public final class Moneys {
  private Moneys() {}

  /** Such as "EUR, prices of 2019". */
  public static String words(Money money) {
    String currency = money.currency().getCurrencyCode();
    return money.priceYear().isPresent()
        ? say(
            "wording.prices-of-year",
            Map.of("currency", currency, "year", Integer.toString(money.priceYear().getAsInt())))
        : say("wording.prices-of-unknown-year", Map.of("currency", currency));
  }
}
