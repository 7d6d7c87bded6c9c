package gapwise.analysis.rows;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** A number of a row stays the number it is; a text is one only in plain decimal notation. */
class RowValueTest {
  private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

  @Test
  void aNumberKeepsEveryBit() {
    for (double value :
        new double[] {0.1 + 0.2, 1.0 / 3, -0.0, 4e-320, 12, 1.7976931348623157e308}) {
      assertEquals(OptionalDouble.of(value), new RowValue.Number(value).number());
      assertEquals(value, Double.parseDouble(new RowValue.Number(value).text()), 0);
    }
  }

  @Test
  void wholeNumbersAreShownWithoutAFraction() {
    assertEquals("12", new RowValue.Number(12).text());
    assertEquals("12", RowValue.of(JSON.numberNode(12.0)).text());
    assertEquals("0.25", new RowValue.Number(0.25).text());
  }

  @Test
  void whatIsNoFiniteNumberIsAText() {
    assertThrows(IllegalArgumentException.class, () -> new RowValue.Number(Double.NaN));
    assertEquals(OptionalDouble.empty(), RowValue.of(JSON.numberNode(1e200 * 1e200)).number());
    for (String text : new String[] {"", "NaN", "0x1p3", "1d", "1,5", "Infinity", "1e999"}) {
      assertEquals(OptionalDouble.empty(), new RowValue.Text(text).number(), text);
    }
  }

  @Test
  void aTextInPlainDecimalNotationIsANumber() {
    assertEquals(OptionalDouble.of(3.5), new RowValue.Text("+3.5").number());
    assertEquals(OptionalDouble.of(0.5), RowValue.of(JSON.textNode(" .5 ")).number());
    assertEquals(OptionalDouble.of(1200), new RowValue.Text("1.2e3").number());
  }
}
