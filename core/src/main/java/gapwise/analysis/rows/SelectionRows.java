package gapwise.analysis.rows;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.result.Result;
import gapwise.evidence.ArmInfection;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.selection.LeftOut;
import gapwise.selection.Question;
import gapwise.selection.QuestionJson;
import gapwise.selection.SelectedRow;
import gapwise.selection.Selection;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;

/**
 * Rows of a plan out of the curated evidence base: the bridge between the record wing and the
 * number wing. A row of the plan stands for a row of the selection, in the same order.
 */
public final class SelectionRows implements EvidenceRows {
  private final Function<Question, Selection> selections;

  /**
   * @param selections answers a question with its rows
   */
  public SelectionRows(Function<Question, Selection> selections) {
    this.selections = selections;
  }

  @Override
  public Selected rows(JsonNode evidence, String measure) {
    Problems problems = new Problems();
    Optional<Question> question = QuestionJson.read(evidence, problems);
    if (question.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    return of(selections.apply(question.get()), measure);
  }

  /**
   * The rows of a selection that was made already.
   *
   * @param measure of one group: {@code proportion} or {@code mean}
   * @throws WrongInputException when the measure cannot be had from arms, or no row was selected
   */
  static Selected of(Selection selection, String measure) {
    require(selection, measure);
    List<Map<String, RowValue>> rows = new ArrayList<>();
    List<Result.Warning> warnings = new ArrayList<>();
    for (SelectedRow row : selection.rows()) {
      Map<String, RowValue> cells = new TreeMap<>();
      cells.put("study", new RowValue.Text(row.label()));
      cells.put(DataTable.STUDY_ID, new RowValue.Text(row.study().id()));
      cells.put(DataTable.ARM_ID, new RowValue.Text(row.arm().id()));
      if (!row.isOfSeveralMethods()) {
        cells.put("method", new RowValue.Text(row.arm().method().principal().code()));
      }
      row.study().citation().year().ifPresent(year -> cells.put("year", new RowValue.Number(year)));
      row.defect()
          .map(defect -> defect.length().centreCentimetres())
          .ifPresent(length -> QuantityCells.put(cells, "defectLengthCentimetres", length));
      ArmInfection.of(row.study(), row.arm())
          .share()
          .ifPresent(share -> cells.put("infectedShare", new RowValue.Number(share)));
      fill(row, selection.question(), cells, warnings);
      rows.add(cells);
    }
    selection.leftOut().forEach(left -> warnings.add(warning(left)));
    selection.notes().forEach(note -> warnings.add(Result.Warning.of(note.code(), note.message())));
    return new Selected(rows, warnings, selection.dataSha256());
  }

  private static void require(Selection selection, String measure) {
    String fitting = measure(selection.question().outcome());
    if (!measure.equals(fitting)) {
      throw wrong(
          "measure",
          "measure-not-for-outcome",
          "found "
              + measure
              + "; arms of the evidence base give a "
              + fitting
              + " for '"
              + selection.question().outcome().label()
              + "'");
    }
    if (selection.rows().isEmpty()) {
      throw wrong(
          "source.evidence",
          "nothing-selected",
          "no arm answers the question"
              + (selection.leftOut().isEmpty()
                  ? "; widen the filters"
                  : "; "
                      + selection.leftOut().size()
                      + " reports were left out, the first because: "
                      + selection.leftOut().get(0).message()));
    }
  }

  /** The measure that arms give for an outcome. */
  public static String measure(Outcome outcome) {
    return outcome.isEvent() || outcome.kind() == Outcome.Kind.CATEGORIES ? "proportion" : "mean";
  }

  private static WrongInputException wrong(String where, String code, String message) {
    return new WrongInputException(List.of(new Problem(where, code, message)));
  }

  private static void fill(
      SelectedRow row,
      Question question,
      Map<String, RowValue> cells,
      List<Result.Warning> warnings) {
    if (row.value() instanceof ReportedValue.Events events) {
      events.count().events().ifPresent(count -> cells.put("events", new RowValue.Number(count)));
      events.count().total().ifPresent(count -> cells.put("total", new RowValue.Number(count)));
    } else if (row.value() instanceof ReportedValue.Categories categories) {
      cells.put("events", new RowValue.Number(categories.good()));
      cells.put("total", new RowValue.Number(categories.sum()));
    } else if (row.value() instanceof ReportedValue.Quantity quantity) {
      new QuantityCells(row, question.outcome(), quantity.summary()).fill(cells, warnings);
    }
  }

  private static Result.Warning warning(LeftOut left) {
    return Result.Warning.of(left.code(), left.label() + ": " + left.message(), left.label())
        .about(Optional.of(left.studyId()), Optional.of(left.armId()));
  }
}
