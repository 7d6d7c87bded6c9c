package gapwise.server.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.evidence.Answer;
import gapwise.evidence.Bone;
import gapwise.evidence.Clock;
import gapwise.evidence.Design;
import gapwise.evidence.ExtractionStatus;
import gapwise.evidence.LengthRange;
import gapwise.evidence.Outcome;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.search.SearchRequest;
import gapwise.search.SearchRequest.DefectMatch;
import gapwise.selection.Question;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;

class EvidenceSourceTest {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();

  @Test
  void aQuestionReadBackFromItsPlanIsTheSame() {
    SearchRequest among =
        new SearchRequest(
            "docking",
            Set.of("bone-transport", "induced-membrane"),
            Set.of(Bone.TIBIA),
            Set.of("42"),
            Set.of(Answer.YES, Answer.MIXED),
            Set.of(Design.RETROSPECTIVE_SERIES),
            Set.of(),
            OptionalInt.of(2005),
            OptionalInt.of(2020),
            Optional.of(new LengthRange(5, 8)),
            DefectMatch.CENTRE);
    Question question =
        new Question(
            Outcome.of("time-to-union"),
            among,
            Optional.of(Clock.FRAME_ON),
            3,
            Optional.of(ExtractionStatus.VERIFIED));
    assertEquals(question, EvidenceSource.read(EvidenceSource.write(question)));
  }

  @Test
  void aQuestionThatNarrowsNothingIsReadBackTheSame() {
    Question question = Question.about(Outcome.of("union"), SearchRequest.EVERYTHING);
    assertEquals(question, EvidenceSource.read(EvidenceSource.write(question)));
  }

  @Test
  void everythingWrongIsToldAtOnce() throws Exception {
    String json =
        "{\"outcome\":\"magic\",\"methods\":[\"wand\"],\"defectLengthFromCentimetres\":8,"
            + "\"defectLengthToCentimetres\":5,\"minimumPatients\":0,\"extra\":1}";
    WrongInputException wrong =
        assertThrows(WrongInputException.class, () -> EvidenceSource.read(MAPPER.readTree(json)));
    assertEquals(
        List.of(
            "source.evidence.extra",
            "source.evidence.outcome",
            "source.evidence.methods",
            "source.evidence.defectLengthToCentimetres",
            "source.evidence.minimumPatients"),
        wrong.problems().stream().map(Problem::where).toList());
  }
}
