package gapwise.claim;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.search.SearchRequest;
import gapwise.search.SearchRequest.DefectMatch;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A claim in words, for each kind of outcome and both directions. */
class ClaimWordsTest {
  private static Claim claim(String outcome, Direction direction, SearchRequest among) {
    return new Claim(
        new Claim.Side(Method.of("bone-transport"), Outcome.of(outcome), Optional.empty()),
        direction,
        new Claim.Side(Method.of("autograft"), Outcome.of(outcome), Optional.empty()),
        among,
        Optional.empty(),
        Optional.empty(),
        5);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "union | MORE | Bone transport gives more limbs united than autograft",
        "union | LESS | Bone transport gives fewer limbs united than autograft",
        "bone-result | MORE | Bone transport gives more good or excellent results (Bone result by"
            + " the ASAMI criteria) than autograft",
        "total-operations | LESS | Bone transport gives fewer of “All operations for each patient”"
            + " than autograft",
        "time-to-union | LESS | Bone transport gives a shorter time to union than autograft",
        "treatment-phase | MORE | Bone transport gives a longer value of “Phase of treatment” than"
            + " autograft",
        "pain | LESS | Bone transport gives a lower value of “Pain, 0 to 10” than autograft",
        "cost | MORE | Bone transport gives a higher value of “Cost of treatment” than autograft"
      })
  void aClaimSaysWhatItComparesInTheWordsOfItsOutcome(
      String outcome, Direction direction, String words) {
    assertEquals(words, claim(outcome, direction, SearchRequest.EVERYTHING).words());
  }

  @Test
  void whatNarrowsAClaimStandsInBracketsBehindIt() {
    SearchRequest narrow =
        SearchRequest.EVERYTHING
            .withDefect(LengthRange.from(6), DefectMatch.OVERLAP)
            .withText("child");
    Claim claim = claim("union", Direction.MORE, narrow);
    assertEquals(
        "Bone transport gives more limbs united than autograft (missing bone reaching 6 cm or more, “child”)",
        claim.words());
    assertEquals(
        "“Union, as the paper counts it” (missing bone reaching 6 cm or more, “child”)",
        claim.outcomeAmong());
    assertEquals(
        "“Union, as the paper counts it”",
        claim("union", Direction.MORE, SearchRequest.EVERYTHING).outcomeAmong());
  }
}
