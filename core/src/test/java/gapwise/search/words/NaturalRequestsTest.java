package gapwise.search.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.vocabulary.Outcome;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Requests as people type them: joining words are no text, families mean any of them, slips. */
class NaturalRequestsTest {
  private static List<String> codes(String typed, Reading.Kind kind) {
    return PlainWords.read(typed).readings().stream()
        .filter(Reading.Coded.class::isInstance)
        .map(Reading.Coded.class::cast)
        .filter(coded -> coded.kind() == kind)
        .flatMap(coded -> coded.codes().stream())
        .toList();
  }

  private static List<String> family(String family) {
    return Outcome.vocabulary().all().stream()
        .filter(one -> one.family().equals(family))
        .map(Outcome::code)
        .collect(Collectors.toList());
  }

  @Test
  void membraneVsTransportIsTwoMethodsAndNoText() {
    for (String joined : List.of("vs", "versus", "compared with", "against", "or")) {
      String typed = "membrane " + joined + " transport";
      assertEquals(
          List.of("induced-membrane", "bone-transport"), codes(typed, Reading.Kind.METHOD), typed);
      assertEquals("", PlainWords.read(typed).rest(), typed);
    }
  }

  @Test
  void infectionAfterMembraneIsAnyOutcomeOfInfection() {
    Understood read = PlainWords.read("infection after membrane");
    assertEquals(family("Infection"), codes("infection after membrane", Reading.Kind.OUTCOME));
    assertEquals("", read.rest());
    assertEquals(List.of("after"), read.aside());
  }

  @Test
  void weightBearingIsAnyOfItsMilestones() {
    assertEquals(family("Weight bearing"), codes("weight bearing 5-8 cm", Reading.Kind.OUTCOME));
    assertEquals("", PlainWords.read("weight bearing 5-8 cm").rest());
  }

  @Test
  void aMistypedWordIsReadAsTheOneItMostLikelyIs() {
    assertEquals(List.of("primary-union"), codes("primry union", Reading.Kind.OUTCOME));
    assertEquals(List.of("induced-membrane"), codes("membrance", Reading.Kind.METHOD));
    assertEquals(List.of("bone-transport"), codes("transprt", Reading.Kind.METHOD));
  }

  @Test
  void aNameThatIsLikeNoWordStaysText() {
    for (String name : List.of("Umberquay", "Tibor", "Brown", "Franke")) {
      assertEquals(name, PlainWords.read(name).rest());
      assertEquals(Optional.empty(), Phrases.mended(name), name);
    }
  }

  @Test
  void joiningWordsBesideTextAreNotSearched() {
    Understood read = PlainWords.read("the outcome of Umberquay");
    assertTrue(read.aside().containsAll(List.of("the", "of")), read.toString());
  }
}
