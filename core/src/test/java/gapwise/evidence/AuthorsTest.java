package gapwise.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import gapwise.evidence.AuthorName.Literal;
import gapwise.evidence.AuthorName.Person;
import gapwise.evidence.vocabulary.Method;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The cell of authors and the people in it. All names are invented. */
class AuthorsTest {
  private static List<AuthorName> names(String text) {
    return Authors.of(text).names();
  }

  @Test
  void aCommaPartsFamilyAndGivenName() {
    assertEquals(
        List.of(
            new Person("Kell", "Bo", ""),
            new Person("van den Ostrow", "I. M.", ""),
            new Person("Brann", "Odo", "Jr")),
        names("Kell, Bo; van den Ostrow, I. M.; Brann, Odo, Jr"));
    assertEquals(List.of(new Person("Brann", "Odo", "Jr.")), names("Brann, Jr., Odo"));
    assertEquals(List.of(new Person("Brann", "", "III")), names("Brann, III"));
  }

  @Test
  void initialsBehindAFamilyNameAreGivenNames() {
    assertEquals(
        List.of(new Person("Kell", "B", ""), new Person("de la Ostrow", "I.M.", "")),
        names("Kell B; de la Ostrow I.M."));
  }

  @Test
  void whatCannotBeTakenApartStaysAsItIsPrinted() {
    for (String text :
        List.of(
            "Bo Kell",
            "Kell",
            "WAX AB",
            "Forearm Study Group",
            "Division of Wax, Imagined Hospital",
            "a, b, c, d",
            ", Bo",
            "et al.")) {
      assertEquals(List.of(new Literal(text)), names(text), text);
    }
  }

  @Test
  void theTextOfTheCellIsKeptLetterByLetter() {
    String text = "Kell, Bo;Ostrow,Ina ;; Brann O";
    Citation citation = Citation.with("Wax").authors(text).build();
    Study study =
        Study.with("kell-2001", citation)
            .arms(List.of(Arm.with("A", MethodUsed.of(Method.of("autograft"))).build()))
            .build();
    Study back = EvidenceJson.read(EvidenceJson.write(study));
    assertEquals(study, back);
    assertEquals(Optional.of(text), back.citation().authors().map(Authors::text));
    assertEquals(3, back.citation().people().size());
  }

  @Test
  void namesThatAreWrittenIntoACellAreReadBack() {
    List<AuthorName> names =
        List.of(
            new Person("Kell", "Bo", ""),
            new Person("Brann", "Odo", "Jr"),
            new Person("Brann", "", "Jr"),
            new Person("van den Ostrow", "", ""),
            new Literal("Forearm Study Group"));
    String text = Authors.ofNames(names).orElseThrow().text();
    assertEquals(
        "Kell, Bo; Brann, Odo, Jr; Brann, , Jr; van den Ostrow,; Forearm Study Group", text);
    assertEquals(names, names(text));
    assertEquals(Optional.empty(), Authors.ofNames(List.of()));
  }

  @Test
  void aGroupIsNeverReadBackAsAPerson() {
    String text = Authors.ofNames(List.of(new Literal("Friends of Wax, Northern"))).get().text();
    assertEquals(List.of(new Literal("Friends of Wax Northern")), names(text));
  }

  @Test
  void theFirstAuthorStandsForAllWhereNoMoreAreKnown() {
    Citation citation = Citation.with("Wax").firstAuthor("van den Ostrow").build();
    assertEquals(List.of(new Person("van den Ostrow", "", "")), citation.people());
    assertEquals(List.of(), Citation.with("Wax").build().people());
  }

  @Test
  void aBlankTextIsNoListOfAuthors() {
    assertEquals(Optional.empty(), Citation.with("Wax").authors(" ").build().authors());
    assertThrows(IllegalArgumentException.class, () -> Authors.of(" "));
  }
}
