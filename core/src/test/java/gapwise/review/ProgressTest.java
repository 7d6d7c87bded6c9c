package gapwise.review;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.screening.Board;
import gapwise.screening.Choice;
import gapwise.screening.Flow;
import gapwise.screening.Reader;
import gapwise.screening.Ruling;
import gapwise.screening.Stage;
import gapwise.screening.Vote;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Progress is told of invented choices, and held against the flow of the same records. */
class ProgressTest {
  private static final String REASON = "Not after an injury";
  private static final List<Reader> READERS =
      List.of(new Reader("AB"), new Reader("CD"), new Reader("EF"));
  private static final ExtractionCounts NOTHING =
      new ExtractionCounts(Map.of(), Map.of(), StageCount.NOTHING, StageCount.NOTHING);

  private static String ref(int number) {
    return "ref-%016x".formatted(number);
  }

  private static Board random(Random chance, int papers) {
    List<String> ids = new ArrayList<>();
    List<Vote> votes = new ArrayList<>();
    List<Ruling> rulings = new ArrayList<>();
    for (int paper = 1; paper <= papers; paper++) {
      ids.add(ref(paper));
      for (Stage stage : Stage.values()) {
        for (Reader reader : READERS.subList(0, chance.nextInt(READERS.size() + 1))) {
          boolean keeps = chance.nextBoolean();
          votes.add(
              new Vote(
                  ref(paper),
                  stage,
                  reader,
                  keeps ? Choice.KEEP : Choice.EXCLUDE,
                  keeps || !stage.asksReason() ? Optional.empty() : Optional.of(REASON),
                  Instant.ofEpochSecond(paper)));
        }
        if (chance.nextInt(4) == 0) {
          rulings.add(
              new Ruling(
                  ref(paper),
                  stage,
                  Choice.KEEP,
                  Optional.empty(),
                  READERS.get(2),
                  "it fits",
                  Instant.EPOCH));
        }
      }
    }
    return new Board(ids, id -> id, votes, rulings);
  }

  @Test
  void theStagesAddUpWithTheFlowOfRecords() {
    for (int seed = 0; seed < 50; seed++) {
      Board board = random(new Random(seed), 30);
      Flow flow = Flow.of(board, Map.of("a search", 30), List.of(REASON), id -> List.of());
      Progress progress = Progress.of(Review.EMPTY, board, NOTHING);
      StageCount title = progress.total(ReviewStage.TITLE);
      assertEquals(flow.screened(), title.done() + title.waiting() + title.apart());
      assertEquals(flow.waitingAtTitle(), title.waiting() + title.apart());
      assertEquals(flow.leftOutByTitle() + flow.sought(), title.done());
      StageCount full = progress.total(ReviewStage.FULL_TEXT);
      assertEquals(flow.sought(), full.done() + full.waiting() + full.apart());
      assertEquals(flow.waitingFullText(), full.waiting() + full.apart());
      StageCount settled = progress.total(ReviewStage.SETTLED);
      assertEquals(title.apart() + full.apart(), settled.waiting());
      int byPeople =
          progress.lines().stream().mapToInt(line -> line.at(ReviewStage.SETTLED).done()).sum();
      assertEquals(settled.done(), byPeople);
    }
  }

  @Test
  void nothingToReadWaitsForWhoDoesNotScreen() {
    Review review =
        new Review(
            "x",
            "",
            "",
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            ReviewLimits.NONE,
            List.of(
                new ReviewPerson(new Reader("AB"), List.of(Duty.SCREENS)),
                new ReviewPerson(new Reader("GH"), List.of(Duty.EXTRACTS))));
    Board board = new Board(List.of(ref(1), ref(2)), id -> id, List.of(), List.of());
    Progress progress = Progress.of(review, board, NOTHING);
    assertEquals(
        List.of(2, 0),
        progress.lines().stream().map(line -> line.at(ReviewStage.TITLE).waiting()).toList());
  }

  @Test
  void theCountsOfExtractionStandWithTheirPeople() {
    Review review =
        new Review(
            "x",
            "",
            "",
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            ReviewLimits.NONE,
            List.of(new ReviewPerson(new Reader("AB"), List.of(Duty.EXTRACTS))));
    StageCount own = new StageCount(3, 1, 0);
    StageCount all = new StageCount(5, 2, 0);
    ExtractionCounts counts =
        new ExtractionCounts(Map.of("ab", own), Map.of(), all, StageCount.NOTHING);
    Board board = new Board(List.of(), id -> id, List.of(), List.of());
    Progress progress = Progress.of(review, board, counts);
    assertEquals(own, progress.lines().get(0).at(ReviewStage.EXTRACTION));
    assertEquals(all, progress.total(ReviewStage.EXTRACTION));
  }
}
