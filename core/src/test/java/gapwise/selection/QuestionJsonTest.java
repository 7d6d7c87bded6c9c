package gapwise.selection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.ExtractionStatus;
import gapwise.evidence.vocabulary.MethodDetail;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.Risk;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.search.HowMade;
import gapwise.search.SearchRequest;
import gapwise.search.SearchRequest.DefectMatch;
import gapwise.search.YearRange;
import gapwise.selection.Question.SuspectedOverlap;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuestionJsonTest {
  private static final JsonMapper JSON = JsonMapper.builder().build();

  @Test
  void everyQuestionReadFromItsTextIsEqual() throws JsonProcessingException {
    Random random = new Random(3);
    for (int i = 0; i < 500; i++) {
      Question question = question(random);
      Problems problems = new Problems();
      JsonNode text = JSON.readTree(QuestionJson.write(question).toString());
      assertEquals(Optional.of(question), QuestionJson.read(text, problems), text::toString);
      assertTrue(problems.isEmpty());
    }
  }

  @Test
  void whatIsNotSaidHasItsDefault() {
    assertEquals(
        Optional.of(Question.about(Outcome.of("union"), SearchRequest.EVERYTHING)),
        QuestionJson.read(json("{'outcome':'union'}"), new Problems()));
    assertEquals(
        json("{'outcome':'union','defectMatch':'overlap','minimumPatients':5}"),
        QuestionJson.write(Question.about(Outcome.of("union"), SearchRequest.EVERYTHING)));
  }

  @Test
  void aDefinitionThatIsNoKindIsNamedWithTheKindsThereAre() {
    Problems problems = new Problems();
    QuestionJson.read(json("{'outcome':'union','definition':'three of four'}"), problems);
    assertEquals("source.evidence.definition", problems.list().get(0).where());
    assertTrue(problems.list().get(0).message().contains("three-cortices"));
    assertTrue(problems.list().get(0).message().contains("not-said"));
  }

  @Test
  void aRangeMayHaveOneEndOnly() {
    assertEquals(
        Optional.of(LengthRange.from(6)),
        read("{'outcome':'union','defectLengthFromCentimetres':6}").among().defect());
    assertEquals(
        Optional.of(new LengthRange(0, 6.5)),
        read("{'outcome':'union','defectLengthToCentimetres':6.5}").among().defect());
  }

  @Test
  void infectedIsOneWordOrAListOfWords() {
    assertEquals(
        Set.of(YesOrNo.YES), read("{'outcome':'union','infected':'yes'}").among().infected());
    assertEquals(
        Set.of(YesOrNo.YES, YesOrNo.MIXED),
        read("{'outcome':'union','infected':['yes','mixed']}").among().infected());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "{}; source.evidence.outcome; missing-field",
        "[]; source.evidence; wrong-type",
        "{'outcome':'onion'}; source.evidence.outcome; unknown-value",
        "{'outcome':7}; source.evidence.outcome; wrong-type",
        "{'outcome':'union','lenght':4}; source.evidence.lenght; unknown-field",
        "{'outcome':'union','methods':['autograft','magic']}; source.evidence.methods[1];"
            + " unknown-value",
        "{'outcome':'union','methods':'autograft'}; source.evidence.methods; wrong-type",
        "{'outcome':'union','bones':['Tibia']}; source.evidence.bones[0]; unknown-value",
        "{'outcome':'union','segments':[42]}; source.evidence.segments[0]; wrong-type",
        "{'outcome':'union','infected':'maybe'}; source.evidence.infected; unknown-value",
        "{'outcome':'union','designs':['']}; source.evidence.designs[0]; wrong-type",
        "{'outcome':'union','details':['fixation:rope']}; source.evidence.details[0];"
            + " unknown-value",
        "{'outcome':'union','details':'fixation:ring'}; source.evidence.details; wrong-type",
        "{'outcome':'union','yearFrom':2010.5}; source.evidence.yearFrom; wrong-type",
        "{'outcome':'union','yearFrom':2010,'yearTo':2000}; source.evidence.yearTo;"
            + " range-ends-before-it-starts",
        "{'outcome':'union','defectLengthFromCentimetres':-1};"
            + " source.evidence.defectLengthFromCentimetres; wrong-type",
        "{'outcome':'union','defectLengthFromCentimetres':6,'defectLengthToCentimetres':4};"
            + " source.evidence.defectLengthToCentimetres; range-ends-before-it-starts",
        "{'outcome':'union','defectLengthToCentimetres':1e999};"
            + " source.evidence.defectLengthToCentimetres; wrong-type",
        "{'outcome':'union','defectMatch':'near'}; source.evidence.defectMatch; unknown-value",
        "{'outcome':'union','status':null}; source.evidence.status; unknown-value",
        "{'outcome':'union','text':['a']}; source.evidence.text; wrong-type",
        "{'outcome':'union','clock':'noon'}; source.evidence.clock; unknown-value",
        "{'outcome':'cost','conversions':'some'}; source.evidence.conversions; unknown-value",
        "{'outcome':'complications','countedAs':'rates'}; source.evidence.countedAs; unknown-value",
        "{'outcome':'union','suspectedOverlap':'maybe'}; source.evidence.suspectedOverlap;"
            + " unknown-value",
        "{'outcome':'union','minimumPatients':0}; source.evidence.minimumPatients; wrong-type",
        "{'outcome':'union','minimumPatients':99999999999}; source.evidence.minimumPatients;"
            + " wrong-type"
      })
  void whatIsWrongIsNamedByItsField(String text, String where, String code) {
    Problems problems = new Problems();
    assertEquals(Optional.empty(), QuestionJson.read(json(text), problems));
    assertEquals(1, problems.list().size(), problems.list()::toString);
    Problem problem = problems.list().get(0);
    assertEquals(where, problem.where());
    assertEquals(code, problem.code());
  }

  @Test
  void everythingThatIsWrongIsSaidInOneGo() {
    Problems problems = new Problems();
    QuestionJson.read(json("{'outcome':'onion','clock':'noon','x':1,'yearTo':'now'}"), problems);
    assertEquals(
        List.of("unknown-field", "unknown-value", "wrong-type", "unknown-value"),
        problems.list().stream().map(Problem::code).toList());
  }

  private static Question question(Random random) {
    SearchRequest among =
        new SearchRequest(
            random.nextBoolean() ? "some \"words\" & ünïcode" : "",
            random.nextBoolean() ? Set.of("autograft", "bone-transport") : Set.of(),
            random.nextBoolean() ? Set.of(Bone.TIBIA, Bone.FOOT) : Set.of(),
            random.nextBoolean() ? Set.of("42", "32-B") : Set.of(),
            random.nextBoolean() ? Set.of(YesOrNo.NO) : Set.of(YesOrNo.MIXED, YesOrNo.UNCLEAR),
            new HowMade(
                random.nextBoolean() ? Set.of(Design.RANDOMISED, Design.CASE_REPORT) : Set.of(),
                random.nextBoolean() ? Set.of(Risk.LOW, Risk.NOT_RATED) : Set.of()),
            random.nextBoolean() ? Set.of("death") : Set.of(),
            random.nextBoolean()
                ? Set.of(
                    MethodDetail.find("transport-levels:more-than-two").orElseThrow(),
                    MethodDetail.find("fixation:ring").orElseThrow())
                : Set.of(),
            new YearRange(
                random.nextBoolean() ? OptionalInt.of(1990) : OptionalInt.empty(),
                random.nextBoolean() ? OptionalInt.of(2020) : OptionalInt.empty()),
            random.nextBoolean()
                ? Optional.of(new LengthRange(random.nextInt(5), 5 + 9 * random.nextDouble()))
                : Optional.empty(),
            DefectMatch.values()[random.nextInt(DefectMatch.values().length)],
            random.nextBoolean()
                ? OptionalDouble.of(24 * random.nextDouble())
                : OptionalDouble.empty());
    return new Question(
        Outcome.vocabulary().all().get(random.nextInt(20)),
        among,
        random.nextBoolean() ? Optional.of(Clock.DOCKING) : Optional.empty(),
        random.nextBoolean() ? Optional.of(UnstatedClock.LEAVE_OUT) : Optional.empty(),
        1 + random.nextInt(20),
        random.nextBoolean() ? Optional.of(ExtractionStatus.VERIFIED) : Optional.empty(),
        random.nextBoolean()
            ? Optional.of(DefinitionAsked.all().get(random.nextInt(DefinitionAsked.all().size())))
            : Optional.empty(),
        random.nextBoolean() ? Conversions.NONE : Conversions.ALL,
        random.nextBoolean() ? Optional.of(CountedAs.EVENTS) : Optional.empty(),
        random.nextBoolean() ? SuspectedOverlap.LEAVE_OUT : SuspectedOverlap.KEEP);
  }

  private static Question read(String text) {
    Problems problems = new Problems();
    Optional<Question> question = QuestionJson.read(json(text), problems);
    assertTrue(problems.isEmpty(), problems.list()::toString);
    return question.orElseThrow();
  }

  private static JsonNode json(String text) {
    try {
      return JSON.readTree(text.replace('\'', '"'));
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException(e);
    }
  }
}
