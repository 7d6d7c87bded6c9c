package gapwise.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.search.SearchRequest;
import gapwise.search.SearchRequest.DefectMatch;
import gapwise.selection.Question;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The title of a question tells what is asked of the length of missing bone. */
class QuestionWordsTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "5 | 8        | OVERLAP   | missing bone reaching into 5 to 8 cm",
        "5 | 8        | CENTRE    | mean or median of missing bone 5 to 8 cm",
        "6 | Infinity | OVERLAP   | missing bone reaching 6 cm or more",
        "6 | Infinity | CENTRE    | mean or median of missing bone 6 cm and more",
        "0 | 4        | OVERLAP   | missing bone reaching 4 cm or less",
        "0 | 4        | CENTRE    | mean or median of missing bone up to 4 cm",
        "6 | 6        | OVERLAP   | missing bone reaching into 6 cm",
        "5 | 8        | ONE_SIDED | only one end of the missing bone given, perhaps 5 to 8 cm",
        "5 | 8        | UNKNOWN   | missing bone not given in numbers",
        "5 | 8        | NO_CENTRE | no mean or median of missing bone given"
      })
  void reachingIntoALengthIsToldApartFromHavingTheMiddleInIt(
      double from, double to, DefectMatch match, String words) {
    SearchRequest among =
        SearchRequest.EVERYTHING
            .withMethods(Set.of("bone-transport"))
            .withDefect(new LengthRange(from, to), match);
    assertEquals(
        "Final union after bone transport: " + words,
        QuestionWords.of(Question.about(Outcome.of("final-union"), among)));
  }
}
