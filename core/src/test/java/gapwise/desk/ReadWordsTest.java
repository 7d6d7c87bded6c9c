package gapwise.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.exchange.Template;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Words of a paper put into the field in hand. The texts are as papers print them; all invented.
 */
class ReadWordsTest {
  private static DraftRow outcome(Draft draft) {
    return draft.rows(Template.OUTCOMES).get(draft.rows(Template.OUTCOMES).size() - 1);
  }

  private static String put(List<ReadWords.Put> puts) {
    return puts.stream()
        .filter(put -> put.asked().isEmpty())
        .map(put -> put.column() + "=" + put.text())
        .sorted()
        .collect(Collectors.joining(" "));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "events | 26/32 (81%) | events=26 percent=81 total=32",
        "events | 26 | events=26",
        "total | 32 | total=32",
        "events | 26 of 32 | events=26 total=32"
      })
  void aShareFillsCountTotalAndPercentageOrTheFieldAlone(String column, String words, String put) {
    Draft draft = DraftTest.complete();
    assertEquals(put, put(ReadWords.of(draft, outcome(draft), column, words)));
  }

  @Test
  void aNumberBringsItsUnit() {
    Draft draft = DraftTest.complete().withOutcome("time-to-union", Map.of());
    assertEquals(
        "mean=28 unit=weeks", put(ReadWords.of(draft, outcome(draft), "mean", "28 weeks")));
  }

  @Test
  void anotherUnitThanTheFieldsIsAskedAndNothingIsPut() {
    Draft draft = DraftTest.complete().withOutcome("time-to-union", Map.of("unit", "months"));
    List<ReadWords.Put> puts = ReadWords.of(draft, outcome(draft), "mean", "28 weeks");
    assertEquals("", put(puts));
    assertTrue(puts.get(0).asked().orElseThrow().contains("weeks"));
  }

  @Test
  void aSpreadThatMayBeOneThingOrAnotherIsNotPutAsEither() {
    Draft draft = DraftTest.complete().withOutcome("time-to-union", Map.of("unit", "months"));
    List<ReadWords.Put> puts = ReadWords.of(draft, outcome(draft), "mean", "7.8 ± 1.8 (4–12)");
    assertTrue(
        puts.stream().noneMatch(put -> put.column().equals("sd") && put.asked().isEmpty()),
        "nothing says that 1.8 is a standard deviation: " + puts);
  }

  @Test
  void wordsGoIntoAFieldOfWordsAsTheyArePrinted() {
    Draft draft = DraftTest.complete();
    DraftRow study = draft.rows(Template.STUDIES).get(0);
    assertEquals(
        List.of(new ReadWords.Put("title", "An invented series of 32 limbs", Optional.empty())),
        ReadWords.of(draft, study, "title", " An invented series of 32 limbs "));
  }
}
