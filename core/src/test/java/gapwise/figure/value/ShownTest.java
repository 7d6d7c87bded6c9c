package gapwise.figure.value;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import gapwise.figure.drawing.DrawnSvg;
import gapwise.figure.drawing.Medium;
import gapwise.figure.drawing.Picture;
import gapwise.figure.forest.Forest;
import gapwise.figure.forest.ForestTable;
import gapwise.figure.forest.InventedForests;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ShownTest {
  @ParameterizedTest
  @CsvSource({
    "0, 0",
    "1, 100",
    "0.87, 87",
    "0.285, 29",
    "0.145, 15",
    "0.994, 99",
    "0.996, 99.6",
    "0.99999, over 99.9",
    "0.004, 0.4",
    "0.0001, under 0.1"
  })
  void proportionsAreWholeNumbersOfAHundredAndNeverRoundedOnToABound(
      double proportion, String shown) {
    assertEquals(shown, Shown.of100(proportion));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "999.4|999",
        "1000|1,000",
        "18079.2|18,079",
        "-18079.2|\u221218,079",
        "1234567.8|1,234,568",
        "12.34|12.3"
      })
  void thousandsStandApart(double value, String shown) {
    assertEquals(shown, Shown.number(value));
    assertEquals(shown, Shown.value(Quantity.mean("EUR"), value));
  }

  @Test
  void differencesOfThousandsStandApartToo() {
    assertEquals("+18,079", Shown.difference(18079, "EUR"));
    assertEquals("\u22121,204", Shown.difference(-1204, "EUR"));
  }

  @ParameterizedTest
  @CsvSource({
    "0, 0",
    "0.1, +10",
    "-0.1, \u221210",
    "-0.004, \u22120.4",
    "0.004, +0.4",
    "-0.0001, just under 0",
    "0.0001, just over 0"
  })
  void differencesCarryTheirSignAndKeepTheirSideOfNoEffect(double difference, String shown) {
    assertEquals(shown, Shown.differenceOf100(difference));
  }

  @ParameterizedTest
  @CsvSource({
    "1, 1.00",
    "0.52, 0.52",
    "0.997, 0.997",
    "1.004, 1.004",
    "0.99999, just under 1",
    "1.00001, just over 1",
    "9.994, 9.99",
    "9.995, 10.0",
    "12.34, 12.3",
    "123.4, 123",
    "1000, 1000",
    "12083, over 1000",
    "0.0421, 0.042",
    "0.0004, under 0.001",
    "0, 0.000"
  })
  void ratiosKeepTheirSideOfOne(double ratio, String shown) {
    assertEquals(shown, Shown.ratio(ratio));
  }

  @Test
  void monthsHaveOneDecimalAndCentimetresAtMostOne() {
    assertEquals("18.0", Shown.months(18));
    assertEquals("4.9", Shown.months(4.85));
    assertEquals("6", Shown.centimetres(6));
    assertEquals("7", Shown.centimetres(6.97));
    assertEquals("5.1", Shown.centimetres(5.1));
  }

  @Test
  void aNumberInAnotherUnitHasDecimalsByItsSize() {
    assertEquals("0.25", Shown.number(0.25));
    assertEquals("4.8", Shown.number(4.81));
    assertEquals("294", Shown.number(293.8));
    assertEquals("\u22121.5", Shown.number(-1.5));
  }

  @Test
  void anEstimateReadsWithItsLimits() {
    Estimate union = Estimate.of(.902, .831, .949);
    assertEquals("90 (83 to 95)", Shown.estimate(Quantity.of100(), union));
    Estimate months = Estimate.of(-2, -4.25, .25);
    assertEquals(
        "\u22122.0 (\u22124.3 to +0.3)", Shown.estimate(Quantity.difference("months"), months));
  }

  @Test
  void sentenceRowAndTableShowTheSameText() {
    Forest forest = InventedForests.twoMethods();
    String pooled = Shown.estimate(forest.measure(), forest.pooled().get(1).estimate());
    Picture picture = forest.draw(Medium.PAGE).get(0);
    assertEquals(
        Optional.of(pooled),
        DrawnSvg.of(picture).letters().stream()
            .map(DrawnSvg.Letters::text)
            .filter(pooled::equals)
            .findFirst());
    assertEquals(pooled, ForestTable.of(forest).lines().get(9).shown());
    assertEquals(true, forest.description().contains(pooled));
  }

  @Test
  void whatIsNoNumberOrNoProportionIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> Shown.of100(1.2));
    assertThrows(IllegalArgumentException.class, () -> Shown.of100(Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> Shown.ratio(-1));
    assertThrows(IllegalArgumentException.class, () -> Shown.months(Double.POSITIVE_INFINITY));
  }
}
