package gapwise.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class TemplateWordsTest {
  @Test
  void aColumnIsNamedByItsHeading() {
    assertEquals(
        "Found 13, but the arm has 12. Say in “Counted” what is counted.",
        TemplateWords.said(
            Template.OUTCOMES,
            "Found 13, but the arm has 12. Say in unit_counted what is counted."));
  }

  /** Every column that one could mistake for nothing but a code. */
  @Test
  void noNameOfAColumnIsLeft() {
    for (String sheet : Template.names()) {
      for (TemplateColumn column : Template.columns(sheet)) {
        if (column.name().contains("_")) {
          String said = TemplateWords.said(sheet, "Look at " + column.name() + " again.");
          assertEquals("Look at “" + column.title() + "” again.", said, sheet);
        }
      }
    }
  }

  @Test
  void wordsThatNameNoColumnStay() {
    String sentence = "“bad_luck” and 'nothing-of-it' stand in file_2, row 3; the outcome too.";
    assertEquals(sentence, TemplateWords.said(sentence));
  }

  @Test
  void aCodeInQuotationMarksIsNamedByItsLabel() {
    assertEquals(
        "Take “Limb salvage, methods not told apart” in all groups.",
        TemplateWords.said(Template.ARMS, "Take 'mixed-salvage' in ALL."));
  }

  @Test
  void aRowIsToldByItsWordsAndAGroupStaysWhatItWasCalled() {
    Map<String, String> row =
        Map.of("arm_id", "ALL", "outcome", "primary-union", "clock", "", "title", "not asked");
    assertEquals(
        List.of("all groups", "Primary union"),
        TemplateWords.row(
            Template.OUTCOMES,
            List.of("arm_id", "outcome", "clock", "no-column"),
            column -> row.getOrDefault(column, "")));
    assertEquals("tibia", TemplateWords.cell(Template.OUTCOMES, "arm_id", "tibia"));
  }

  @Test
  void severalCodesInOneCellAreEachNamed() {
    TemplateColumn several =
        Template.columns(Template.OUTCOMES).stream()
            .filter(column -> column.several() && column.choices().size() > 1)
            .findFirst()
            .orElseThrow();
    TemplateColumn.Choice one = several.choices().get(0);
    TemplateColumn.Choice other = several.choices().get(1);
    assertEquals(
        one.label() + "; " + other.label() + "; what it lacks",
        several.inWords(one.code() + ";" + other.code() + "; what it lacks"));
    assertTrue(several.inWords("").isEmpty());
  }
}
