package gapwise.extraction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.effect.Interval;
import gapwise.exchange.Template;
import gapwise.extraction.FieldAgreement.Texts;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Agreement of two people on one field. */
class FieldAgreementTest {
  private static FieldAgreement field(
      String sheet, String column, int alike, int differ, List<Texts> pairs) {
    return new FieldAgreement(
        sheet, Template.column(sheet, column).orElseThrow(), 1, alike, differ, 0, pairs);
  }

  private static void add(List<Texts> pairs, int times, String first, String second) {
    for (int i = 0; i < times; i++) {
      pairs.add(new Texts(first, second, ""));
    }
  }

  @Test
  void theShareHasWilsonsInterval() {
    // 81 of 263: 0.2553 to 0.3662 (Newcombe, Stat Med 1998;17:857, table I, method 3).
    Interval limits =
        field("arms", "label", 81, 182, List.of()).share().orElseThrow().limits().orElseThrow();
    assertEquals(0.2553, limits.lower(), 0.00005);
    assertEquals(0.3662, limits.upper(), 0.00005);
  }

  @Test
  void aFieldWithAListOfWordsHasKappa() {
    List<Texts> pairs = new ArrayList<>();
    add(pairs, 20, "yes", "yes");
    add(pairs, 5, "yes", "no");
    add(pairs, 10, "no", "yes");
    add(pairs, 15, "no", "no");
    // By hand: observed 35/50 = 0.7, by chance 0.5 * 0.6 + 0.5 * 0.4 = 0.5, so (0.7 - 0.5) / 0.5.
    FieldAgreement field = field("patients", "infected", 35, 15, pairs);
    assertEquals(0.4, field.kappa().orElseThrow().estimate(), 1e-12);
    assertTrue(field.correlation().isEmpty(), "words have no correlation");
  }

  @Test
  void numbersHaveLimitsOfAgreementInOneUnitOnly() {
    List<Texts> pairs =
        List.of(new Texts("5", "4", "cm"), new Texts("6", "6", "cm"), new Texts("7", "8", "cm"));
    FieldAgreement field = field("arms", "defect_length_mean", 1, 2, pairs);
    // By hand: differences 1, 0 and -1 have mean 0 and SD 1.
    assertEquals(-1.96, field.limits().orElseThrow().lower(), 0.0005);
    assertEquals(1.96, field.limits().orElseThrow().upper(), 0.0005);
    assertTrue(field.correlation().isPresent());
    List<Texts> mixed = new ArrayList<>(pairs);
    mixed.add(new Texts("52", "52", "mm"));
    FieldAgreement two = field("arms", "defect_length_mean", 2, 2, mixed);
    assertTrue(
        two.correlation().isEmpty() && two.limits().isEmpty(), "centimetres beside millimetres");
  }
}
