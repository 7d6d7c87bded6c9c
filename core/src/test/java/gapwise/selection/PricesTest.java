package gapwise.selection;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class PricesTest {
  private static String told(int silent, Integer... years) {
    return new Prices(Optional.of("EUR"), new TreeSet<>(List.of(years)), silent).sentence();
  }

  @Test
  void pricesOfOneYearNameIt() {
    assertEquals("The costs are in EUR, in prices of 2019.", told(0, 2019));
  }

  @Test
  void pricesOfSeveralYearsAreSaidToStandAsPrinted() {
    assertEquals(
        "The costs are in EUR, in prices of the years 2015 to 2019 as printed; they are not"
            + " brought to one year.",
        told(0, 2019, 2015));
  }

  @Test
  void seriesThatStateNoYearAreCounted() {
    assertEquals(
        "The costs are in EUR, in prices of 2019; 1 series does not say of which year its prices"
            + " are.",
        told(1, 2019));
    assertEquals(
        "The costs are in EUR, in prices of the years 2015 to 2019 as printed, and 2 series do not"
            + " say of which year; they are not brought to one year.",
        told(2, 2015, 2019));
    assertEquals("The costs are in EUR; no series says of which year its prices are.", told(3));
  }

  @Test
  void aCurrencyThatNobodyStatesIsNotMadeUp() {
    Prices unknown = new Prices(Optional.empty(), new TreeSet<>(), 2);
    assertEquals("of an unstated currency", unknown.unit());
    assertEquals("The costs stand in a currency that no series states.", unknown.sentence());
  }
}
