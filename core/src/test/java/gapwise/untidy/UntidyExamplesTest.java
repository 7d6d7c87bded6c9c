package gapwise.untidy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Reads invented sheets, each untidy in its own way, and holds what a person reads in them against
 * it. {@link UntidyFigures} prints the table of docs/methods/untidy-sheets.md.
 */
class UntidyExamplesTest {
  static final List<String> ALL =
      List.of(
          "01-transposed-patients",
          "02-two-tables-in-one-sheet",
          "03-groups-as-section-lines",
          "04-units-row",
          "05-percent-columns",
          "06-merged-first-column",
          "07-mixed-units",
          "08-damaged-dates",
          "09-european-decimals",
          "10-hidden-and-struck",
          "11-footnote-marks",
          "12-events-in-words",
          "13-groups-in-columns-sections",
          "14-long-form",
          "15-groups-over-measures",
          "16-several-sheets",
          "17-repeated-header",
          "18-ambiguous",
          "19-french-sixteen-bits",
          "20-two-columns-of-labels",
          "21-time-points",
          "22-patients-of-studies",
          "23-percent-only-and-words",
          "24-total-first",
          "25-side-by-side",
          "26-coded-answers",
          "27-min-max-columns",
          "28-outcomes-by-groups-long",
          "29-subgroup-lines",
          "30-thousands-and-spaces",
          "31-two-header-rows-as-text",
          "32-studies-in-columns",
          "33-counts-above-limits",
          "34-citations-and-numbers",
          "35-sections-name-studies",
          "36-patients-with-dates",
          "37-bands-in-rows",
          "38-age-and-sex-together",
          "39-groups-mean-sd-in-brackets",
          "40-comparison-columns",
          "41-merged-method-below",
          "42-patients-with-questions");

  static List<String> all() {
    return ALL;
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("all")
  void takesNothingWrongAndMissesNothing(String name) {
    Judged judged = Judged.of(Example.of(name + ".txt"));
    assertEquals(List.of(), judged.lines());
    assertTrue(judged.counts().getOrDefault("right", 0) > 0);
  }
}
