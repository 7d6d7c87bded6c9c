package gapwise.evidence.vocabulary;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class InstrumentTest {
  /**
   * Items and most points as tables of reviews print them: index of 12 items, 24 points (16 of 8
   * items), ijssurgery.com table 2; stars 9 of 8 items, BMC Cancer 2012;12:498, supplement; 10
   * questions, PMC7778754 table 2; 7 domains, PMC10421623 table 3. Five domains: neurosurgery wiki
   * on the revised instrument for trials.
   */
  @ParameterizedTest
  @CsvSource({
    "minors, 12, 24, 16",
    "newcastle-ottawa, 8, 9, 6",
    "jbi-case-series, 10, 0, 0",
    "robins-i, 7, 0, 0",
    "rob-2, 5, 0, 0"
  })
  void eachHasItsPublishedItemsAndMost(String code, int items, int most, int ofASeries) {
    Instrument instrument = Instrument.of(code);
    assertEquals(items, instrument.items().size());
    assertEquals(most, instrument.items().stream().mapToInt(instrument::most).sum());
    assertEquals(
        ofASeries,
        instrument.items().stream()
            .filter(item -> !item.comparative())
            .mapToInt(instrument::most)
            .sum());
  }

  @Test
  void codesAreNotSharedAndEveryOverallJudgementSaysItsRisk() {
    for (Instrument instrument : Instrument.vocabulary().all()) {
      Set<String> codes = new HashSet<>();
      instrument.items().forEach(item -> assertTrue(codes.add(item.code()), item.code()));
      Set<String> answers = new HashSet<>();
      instrument.judgements().forEach(one -> assertTrue(answers.add(one.code()), one.code()));
      instrument.overall().forEach(one -> assertTrue(one.risk().isPresent(), one.code()));
      assertTrue(!instrument.items().stream().anyMatch(item -> item.code().equals("overall")));
    }
  }

  @Test
  void overallJudgementsGoFromBestToWorst() {
    for (Instrument instrument : Instrument.vocabulary().all()) {
      Risk before = Risk.LOW;
      for (Instrument.Judgement one : instrument.overall()) {
        Risk risk = one.risk().orElseThrow();
        if (risk.isRated()) {
          assertTrue(risk.compareTo(before) >= 0, instrument.code() + " " + one.code());
          before = risk;
        }
      }
    }
  }
}
