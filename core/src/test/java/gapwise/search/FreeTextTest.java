package gapwise.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.Arm;
import gapwise.evidence.Citation;
import gapwise.evidence.EvidenceJson;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.StudyBuilder;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.store.DocumentStore;
import gapwise.store.Write;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is found by words; all studies are invented. */
class FreeTextTest {
  @TempDir static Path home;
  private static DocumentStore store;
  private static StudyIndex search;

  @BeforeAll
  static void fill() {
    store = DocumentStore.open(home, Clock.systemUTC());
    search = StudyIndex.open(home.resolve("index"), store, "study", message -> {});
    put(
        study(
            "spacers",
            "Antibiotic spacers in infected tibial defects",
            "Invénted",
            "induced-membrane"),
        study("rings", "Ring frames for docking of long defects", "Imagined", "bone-transport"),
        study("fibulas", "Vascularised fibulas after blast", "Madeup", "vascularised-bone-flap"),
        study("defect-docking", "Long docking defects without rings", "Fancied", "autograft"));
  }

  @AfterAll
  static void close() {
    search.close();
    store.close();
  }

  @Test
  void wordsAreFoundInAnyFormOfTheWord() {
    assertEquals(Set.of("spacers"), found("spacer"));
    assertEquals(Set.of("spacers"), found("INFECTION"));
    assertEquals(Set.of("fibulas"), found("fibula"));
  }

  @Test
  void britishAndAmericanEndingsAreOne() {
    assertEquals(Set.of("fibulas"), found("vascularized"));
    assertEquals(Set.of("fibulas"), found("vascularised"));
  }

  @Test
  void otherNamesOfAMethodFindIt() {
    assertEquals(Set.of("spacers"), found("Masquelet"));
    assertEquals(Set.of("rings"), found("distraction osteogenesis"));
  }

  @Test
  void authorsAreFoundWithoutTheirAccentsAndStudiesByTheirId() {
    assertEquals(Set.of("spacers"), found("invented"));
    assertEquals(Set.of("spacers"), found("Invénted 2001"));
    assertEquals(Set.of("defect-docking"), found("\"defect-docking\""));
  }

  @Test
  void wordsOfStatementsAndDefinitionsAreFound() {
    assertEquals(Set.of("rings"), found("bridging cortices"));
    assertEquals(Set.of("rings"), found("refracture"));
  }

  @Test
  void allWordsMustBeFoundAcrossFields() {
    assertEquals(Set.of("rings", "defect-docking"), found("docking defects"));
    assertEquals(Set.of("rings"), found("docking frames imagined"));
  }

  @Test
  void whereNoArmHasAllWordsThoseWithAnyAreShown() {
    assertEquals(Set.of("spacers", "fibulas"), found("antibiotic blast"));
  }

  @Test
  void thatNoArmHasAllWordsIsSaidWithTheWordsThatStandNowhere() {
    LooseWords apart = search.shown().looseWords("antibiotic blast").orElseThrow();
    assertEquals(List.of(), apart.nowhere());
    assertTrue(apart.sentence().contains("“antibiotic” and “blast” together"), apart.sentence());
    LooseWords one = search.shown().looseWords("docking xyzzyqwert").orElseThrow();
    assertEquals(List.of("xyzzyqwert"), one.nowhere());
    assertTrue(one.sentence().endsWith("Found nowhere here: “xyzzyqwert”."), one.sentence());
    LooseWords phrase = search.shown().looseWords("\"defects long\"").orElseThrow();
    assertEquals("“defects long” stands nowhere here.", phrase.sentence());
    assertEquals(Optional.empty(), search.shown().looseWords("docking defects"));
    assertEquals(Optional.empty(), search.shown().looseWords("the of"));
  }

  @Test
  void aPhraseInQuotationMarksIsFoundInItsOrder() {
    assertEquals(Set.of("rings"), found("\"long defects\""));
    assertEquals(Set.of("defect-docking"), found("“docking defects”"));
  }

  @Test
  void emptyTextMarksAndWordsThatEveryTextHasFindEverything() {
    for (String text : List.of("", "   ", "?!*", "\"", "the of and", "\"\"")) {
      assertEquals(4, answer(text).arms(), text);
    }
  }

  @Test
  void aMisspeltWordIsOfferedInItsLikelySpelling() {
    assertEquals(Optional.of("masquelet"), answer("masquelett").didYouMean());
    assertEquals(Optional.of("antibiotic spacers"), answer("antibiotik spacers").didYouMean());
    assertEquals(Optional.empty(), answer("antibiotic").didYouMean());
    assertEquals(Optional.empty(), answer("xyzzyqwert").didYouMean());
  }

  @Test
  void aSpellingIsNotOfferedWhenTheFiltersLeaveNothingOfIt() {
    SearchRequest request =
        SearchRequest.EVERYTHING.withText("masquelett").withMethods(Set.of("autograft"));
    assertEquals(
        Optional.empty(),
        search.shown().search(request, StudySearch.Order.RELEVANCE, 0, 10).didYouMean());
  }

  @Test
  void aWordInTheTitleCountsMoreThanOneInTheMethod() {
    put(study("one", "Transport over a nail", "Nobody", "other"));
    List<SearchAnswer.ArmHit> hits = answer("transport").hits();
    store.write(List.of(Write.delete("study", "one")), "tester", "only for this");
    assertEquals(List.of("one", "rings"), hits.stream().map(SearchAnswer.ArmHit::studyId).toList());
  }

  @Test
  void nothingThatIsTypedIsAnError() {
    Random random = new Random(5);
    String alphabet = "ab \"\\+-&|!(){}[]^~*?:/<>=\u0000\ud83d\ude00\u201cAND OR NOT é\n\ud800";
    for (int i = 0; i < 1000; i++) {
      StringBuilder text = new StringBuilder();
      for (int length = random.nextInt(30); length > 0; length--) {
        text.append(alphabet.charAt(random.nextInt(alphabet.length())));
      }
      assertTrue(answer(text.toString()).arms() >= 0, text::toString);
    }
    assertTrue(answer("a-b-c-d-e-".repeat(2000)).arms() >= 0);
    assertTrue(answer("docking ".repeat(5000)).arms() == 2);
    assertTrue(answer("\"" + "x ".repeat(5000) + "\"").arms() >= 0);
    assertTrue(answer("z".repeat(100_000)).arms() == 0);
  }

  private static Study study(String id, String title, String author, String method) {
    Arm arm = Arm.with("A", MethodUsed.of(Method.of(method))).build();
    StudyBuilder study =
        Study.with(id, Citation.with(title).firstAuthor(author).year(2001).build())
            .arms(List.of(arm))
            .invented(true);
    if (id.equals("rings")) {
      study
          .unionDefinition("three bridging cortices")
          .outcomes(
              List.of(
                  OutcomeReport.with(
                          new Scope.OneArm("A"),
                          Outcome.of("refracture"),
                          new ReportedValue.Statement("hardly ever seen", OptionalInt.empty()))
                      .build()));
    }
    return study.build();
  }

  private static void put(Study... studies) {
    List<Write> writes = new ArrayList<>();
    for (Study study : studies) {
      writes.add(Write.put("study", study.id(), EvidenceJson.write(study)));
    }
    store.write(writes, "tester", "invented studies");
  }

  private static SearchAnswer answer(String text) {
    SearchRequest everything = SearchRequest.EVERYTHING;
    return search
        .shown()
        .search(SearchRequest.EVERYTHING.withText(text), StudySearch.Order.RELEVANCE, 0, 10);
  }

  private static Set<String> found(String text) {
    return answer(text).hits().stream()
        .map(SearchAnswer.ArmHit::studyId)
        .collect(java.util.stream.Collectors.toSet());
  }
}
