package gapwise.review;

import gapwise.screening.Board;
import gapwise.screening.Reader;
import gapwise.screening.Stage;
import gapwise.screening.Standing;
import gapwise.screening.Vote;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Predicate;

/**
 * How far a review has come, by person and stage.
 *
 * @param lines one a person: first those of the review, then whoever else has done something
 * @param totals of each stage: papers decided, waiting and apart, which add up with the flow of
 *     records; studies for extraction
 */
public record Progress(List<Line> lines, Map<ReviewStage, StageCount> totals) {
  public Progress {
    lines = List.copyOf(lines);
    totals = Map.copyOf(totals);
  }

  /** One person. */
  public record Line(ReviewPerson person, Map<ReviewStage, StageCount> counts) {
    public Line {
      Objects.requireNonNull(person, "person");
      counts = Map.copyOf(counts);
    }

    /** What of a stage. */
    public StageCount at(ReviewStage stage) {
      return counts.getOrDefault(stage, StageCount.NOTHING);
    }
  }

  /** What of a stage together. */
  public StageCount total(ReviewStage stage) {
    return totals.getOrDefault(stage, StageCount.NOTHING);
  }

  /** How far it has come. */
  public static Progress of(Review review, Board board, ExtractionCounts extraction) {
    Map<Reader, Integer> settled = settled(board);
    Map<String, ReviewPerson> people = new LinkedHashMap<>();
    review.people().forEach(person -> people.put(person.who().key(), person));
    for (Stage stage : Stage.values()) {
      board
          .readers(stage)
          .keySet()
          .forEach(who -> people.putIfAbsent(who.key(), new ReviewPerson(who, List.of())));
    }
    settled
        .keySet()
        .forEach(who -> people.putIfAbsent(who.key(), new ReviewPerson(who, List.of())));
    List<Line> lines = new ArrayList<>();
    people.forEach(
        (key, person) ->
            lines.add(line(person, board, extraction, countOf(settled, person.who()))));
    Map<ReviewStage, StageCount> totals = new EnumMap<>(ReviewStage.class);
    totals.put(ReviewStage.TITLE, papers(board, Stage.TITLE));
    totals.put(ReviewStage.FULL_TEXT, papers(board, Stage.FULL_TEXT));
    totals.put(
        ReviewStage.SETTLED,
        new StageCount(
            settled.values().stream().mapToInt(Integer::intValue).sum(), apart(board), 0));
    totals.put(ReviewStage.EXTRACTION, extraction.allExtracted());
    totals.put(ReviewStage.CHECKED, extraction.allChecked());
    return new Progress(lines, totals);
  }

  private static Line line(
      ReviewPerson person, Board board, ExtractionCounts extraction, int settled) {
    String key = person.who().key();
    Map<ReviewStage, StageCount> counts = new EnumMap<>(ReviewStage.class);
    counts.put(ReviewStage.TITLE, read(person, board, Stage.TITLE));
    counts.put(ReviewStage.FULL_TEXT, read(person, board, Stage.FULL_TEXT));
    int toSettle = person.duties().contains(Duty.SETTLES) ? apart(board) : 0;
    counts.put(ReviewStage.SETTLED, new StageCount(settled, toSettle, 0));
    counts.put(
        ReviewStage.EXTRACTION, extraction.extracted().getOrDefault(key, StageCount.NOTHING));
    counts.put(ReviewStage.CHECKED, extraction.checked().getOrDefault(key, StageCount.NOTHING));
    return new Line(person, counts);
  }

  /** Nothing waits for a person of the review who does not screen. */
  private static StageCount read(ReviewPerson person, Board board, Stage stage) {
    Reader reader = person.who();
    int done = countOf(board.readers(stage), reader);
    boolean screens = person.duties().isEmpty() || person.duties().contains(Duty.SCREENS);
    int apart =
        (int)
            board.apart(stage).values().stream()
                .filter(two -> two.votes().stream().map(Vote::reader).anyMatch(isOne(reader)))
                .count();
    return new StageCount(done, screens ? board.next(stage, reader).size() : 0, apart);
  }

  /** She may be known by another spelling of the same name. */
  private static int countOf(Map<Reader, Integer> counts, Reader reader) {
    return counts.entrySet().stream()
        .filter(one -> isOne(reader).test(one.getKey()))
        .mapToInt(Map.Entry::getValue)
        .sum();
  }

  private static Predicate<Reader> isOne(Reader reader) {
    return other -> other.key().equals(reader.key());
  }

  private static StageCount papers(Board board, Stage stage) {
    int decided = 0;
    int waiting = 0;
    for (String paper : board.papers(stage)) {
      Standing standing = board.standing(stage, paper);
      decided += standing instanceof Standing.Decided ? 1 : 0;
      waiting += standing instanceof Standing.Waiting ? 1 : 0;
    }
    return new StageCount(decided, waiting, board.apart(stage).size());
  }

  private static int apart(Board board) {
    int apart = 0;
    for (Stage stage : Stage.values()) {
      apart += board.apart(stage).size();
    }
    return apart;
  }

  private static Map<Reader, Integer> settled(Board board) {
    Map<Reader, Integer> settled = new LinkedHashMap<>();
    for (Stage stage : Stage.values()) {
      for (String paper : board.papers(stage)) {
        if (board.standing(stage, paper) instanceof Standing.Decided decided) {
          decided.ruling().ifPresent(ruling -> settled.merge(ruling.who(), 1, Integer::sum));
        }
      }
    }
    return settled;
  }
}
