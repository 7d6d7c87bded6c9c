package gapwise.appraisal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.vocabulary.Instrument;
import gapwise.evidence.vocabulary.Risk;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConclusionTest {
  /**
   * Domains and overall judgements as reviews print them: the first two rows PMC7017593, table 3;
   * the next five PMC10421623, table 3 (Baum, Grewal, Rosenberg, Rosero-Bixby, Ranzani).
   */
  @ParameterizedTest
  @CsvSource({
    "C C S M M C M, C",
    "C S S M M S M, C",
    "M L M M L L L, M",
    "M M L L L L L, M",
    "M M L L M L L, M",
    "M L L L M M L, M",
    "L L L L L M L, M"
  })
  void sevenDomainsAreAsBadAsTheWorst(String domains, String published) {
    assertEquals(published, byRule("robins-i", domains));
  }

  /**
   * The rule for no information, from memory of Sterne et al. 2016, table of overall judgements: it
   * stands unless a domain is serious or critical.
   */
  @Test
  void noInformationStandsUnlessADomainIsSerious() {
    assertEquals("NI", byRule("robins-i", "M L L NI L M L"));
    assertEquals("S", byRule("robins-i", "S L L NI L M L"));
    assertEquals(Risk.NOT_RATED, of("robins-i", "M L L NI L M L", "").risk());
  }

  /** Sterne et al., BMJ 2019;366:l4898, from memory: low if all are low, high if any is high. */
  @Test
  void fiveDomainsAreAsBadAsTheWorst() {
    assertEquals("L", byRule("rob-2", "L L L L L"));
    assertEquals("So", byRule("rob-2", "L So L L L"));
    assertEquals("H", byRule("rob-2", "L So L H L"));
    assertEquals(Risk.SERIOUS, of("rob-2", "L So L H L", "").risk());
  }

  @Test
  void severalConcernsMayBeSettledAsHigh() {
    Conclusion settled = of("rob-2", "So So L So L", "H");
    assertInstanceOf(Conclusion.Whole.Settled.class, settled.whole());
    assertEquals(Risk.SERIOUS, settled.risk());
  }

  /**
   * PMC10421623, table 3, prints low overall with a moderate domain (Rane): the rule forbids it.
   */
  @Test
  void whatIsSettledBetterThanTheWorstDomainCountsAsTheWorst() {
    Conclusion rane = of("robins-i", "L L L L M L L", "L");
    Conclusion.Whole.BetterThanRule whole =
        assertInstanceOf(Conclusion.Whole.BetterThanRule.class, rane.whole());
    assertEquals("low", whole.said().code());
    assertEquals("moderate", whole.worst().code());
    assertEquals(Risk.SOME, rane.risk());
  }

  @Test
  void openDomainsLeaveTheWholeOpenUnlessOneIsAlreadySerious() {
    Conclusion open = of("robins-i", "L M . . . . .", "");
    assertInstanceOf(Conclusion.Whole.Open.class, open.whole());
    assertEquals(Risk.NOT_RATED, open.risk());
    assertEquals(5, open.unanswered().size());
    assertEquals(Risk.CRITICAL, of("robins-i", "C M . . . . .", "").risk());
  }

  /**
   * Totals as reviews print them: Pradhan and Feng (ijssurgery.com, table 2, 2020), Jaffer, Liao
   * and Kubat (World J Emerg Surg 2023, table 2), Maman (PMC7754516, table 2).
   */
  @ParameterizedTest
  @CsvSource({
    "2 0 2 2 0 1 0 0 2 2 2 1, 14, 24",
    "2 0 0 2 2 1 0 0 2 2 2 2, 15, 24",
    "2 2 2 2 0 2 0 0, 10, 16",
    "2 2 1 2 0 2 0 0 2 1 2 2, 16, 24",
    "2 2 2 2 0 2 0 0 2 2 1 2, 17, 24",
    "2 2 2 1 0 0 0 0, 7, 16"
  })
  void pointsOfTheIndexAddUpBesideTheirMost(String items, int counted, int most) {
    assertEquals(
        Optional.of(new Points(counted, most, "points")), of("minors", items, "").points());
  }

  /** Stars as a review prints them (Open Heart, scale for cohorts: Bougouin, Nanjayya, Strote). */
  @ParameterizedTest
  @CsvSource({"1 1 1 1 2 1 1 1, 9", "0 1 1 1 0 1 1 1, 6", "0 1 1 1 0 1 1 0, 5"})
  void starsAddUp(String items, int counted) {
    assertEquals(
        Optional.of(new Points(counted, 9, "stars")), of("newcastle-ottawa", items, "").points());
  }

  /** A series has no group beside it: of 6, never scaled up to 9. */
  @Test
  void starsOfASeriesAreOfSix() {
    assertEquals(
        Optional.of(new Points(5, 6, "stars")),
        of("newcastle-ottawa", "1 . 1 1 . 1 0 1", "").points());
  }

  @Test
  void nothingIsAddedUpWhileItemsAreOpen() {
    Conclusion half = of("minors", "2 2 2 2 0 2 0 0 2", "");
    assertEquals(Optional.empty(), half.points());
    assertEquals(
        List.of("same-period", "groups-alike", "analysis"),
        half.unanswered().stream().map(Instrument.Item::code).toList());
  }

  /** Neither index, stars nor checklist has published bands, so only people's own words count. */
  @Test
  void pointsAloneSayNothingOfRisk() {
    for (String full : List.of("minors", "newcastle-ottawa", "jbi-case-series")) {
      Instrument by = Instrument.of(full);
      String best =
          by.items().stream().map(item -> bestOf(by, item)).collect(Collectors.joining(" "));
      assertEquals(Risk.NOT_RATED, of(full, best, "").risk(), full);
      assertEquals(Risk.LOW, of(full, best, "L").risk(), full);
    }
    assertTrue(of("jbi-case-series", "Y Y Y Y Y Y Y Y Y Y", "").points().isEmpty());
  }

  private static String bestOf(Instrument by, Instrument.Item item) {
    return by.allowed(item).stream()
        .filter(one -> !one.notAsked())
        .findFirst()
        .orElseThrow()
        .letter();
  }

  private static Conclusion of(String instrument, String marks, String overall) {
    return Conclusion.of(Judged.by(instrument, marks, overall));
  }

  private static String byRule(String instrument, String marks) {
    return assertInstanceOf(Conclusion.Whole.ByRule.class, of(instrument, marks, "").whole())
        .worst()
        .letter();
  }
}
