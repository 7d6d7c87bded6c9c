package gapwise.analysis.rows;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.result.ReadCounts;
import gapwise.analysis.result.ReportedCentres;
import gapwise.analysis.result.Result;
import gapwise.evidence.ArmInfection;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.selection.CentresReported;
import gapwise.selection.CountedAs;
import gapwise.selection.HowRead;
import gapwise.selection.LeftOut;
import gapwise.selection.Question;
import gapwise.selection.QuestionJson;
import gapwise.selection.SelectedRow;
import gapwise.selection.Selection;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Rows of a plan out of the curated evidence base: the bridge between the record wing and the
 * number wing. A row of the plan stands for a row of the selection, in the same order.
 */
public final class SelectionRows implements EvidenceRows {
  private static final String MEAN = "mean";
  private static final String RATE = "incidence-rate";

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
    return of(selections.apply(counted(question.get(), measure)), measure);
  }

  /** Of what one patient can have several, the measure says which form of counting is meant. */
  private static Question counted(Question question, String measure) {
    if (question.outcome().kind() != Outcome.Kind.COUNT || question.countedAs().isPresent()) {
      return question;
    }
    return switch (measure) {
      case RATE -> question.withCountedAs(Optional.of(CountedAs.EVENTS));
      case MEAN -> question.withCountedAs(Optional.of(CountedAs.MEANS));
      default -> question;
    };
  }

  /**
   * The rows of a selection that was made already.
   *
   * @param measure of one group: {@code proportion}, {@code mean} or {@code incidence-rate}
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
      details(row, cells);
      fill(row, selection.question(), cells, warnings);
      rows.add(cells);
    }
    // Where no paper says of how many patients, rows are listed without weight, not refused.
    String number = measure.equals(RATE) ? "personTime" : measure.equals(MEAN) ? "n" : "total";
    rows.get(0).putIfAbsent(number, RowValue.BLANK);
    selection.leftOut().forEach(left -> warnings.add(warning(left)));
    selection.notes().forEach(note -> warnings.add(Result.Warning.of(note.code(), note.message())));
    return new Selected(
        rows, warnings, reported(selection), selection.dataSha256(), Optional.of(read(selection)));
  }

  private static ReadCounts read(Selection selection) {
    HowRead read = HowRead.ofRows(selection.rows());
    return new ReadCounts(
        read.agreed(), read.checked(), read.once(), read.drafts(), read.secondHand());
  }

  /**
   * Details of the method under their codes: listed words as listed, numbers as numbers. A value of
   * groups of several methods has none, and free words make no groups.
   */
  private static void details(SelectedRow row, Map<String, RowValue> cells) {
    if (row.isOfSeveralMethods()) {
      return;
    }
    row.arm()
        .listedDetails()
        .forEach(one -> cells.put(one.kind().code(), new RowValue.Text(one.word())));
    row.arm()
        .details()
        .forEach(
            (code, detail) ->
                detail.number().ifPresent(n -> cells.put(code, new RowValue.Number(n))));
  }

  /**
   * What each method's rows report as means and medians, and all of them where they are several.
   */
  private static List<ReportedCentres> reported(Selection selection) {
    Outcome outcome = selection.question().outcome();
    Map<String, List<SelectedRow>> byMethod =
        selection.rows().stream()
            .collect(
                Collectors.groupingBy(
                    row -> row.arm().method().principal().code(),
                    TreeMap::new,
                    Collectors.toList()));
    List<ReportedCentres> reported = new ArrayList<>();
    byMethod.forEach(
        (method, rows) ->
            CentresReported.of(outcome, rows)
                .map(centres -> told(Optional.of(method), centres))
                .ifPresent(reported::add));
    if (reported.size() > 1) {
      CentresReported.of(outcome, selection.rows())
          .map(centres -> told(Optional.empty(), centres))
          .ifPresent(reported::add);
    }
    return reported;
  }

  private static ReportedCentres told(Optional<String> method, CentresReported of) {
    return new ReportedCentres(
        method,
        of.series(),
        of.means(),
        of.medians(),
        of.unit(),
        of.centres().minimum().orElseThrow(),
        of.centres().lowerQuartile().orElseThrow(),
        of.centres().upperQuartile().orElseThrow(),
        of.centres().maximum().orElseThrow(),
        of.weighted(),
        of.patients());
  }

  private static void require(Selection selection, String measure) {
    String fitting = measure(selection.settled());
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

  /**
   * The measure that arms give for a question. Of what one patient can have several it is a rate
   * for each patient where events among patients are asked for, else a mean.
   */
  public static String measure(Question question) {
    Outcome outcome = question.outcome();
    if (outcome.isEvent() || outcome.kind() == Outcome.Kind.CATEGORIES) {
      return "proportion";
    }
    boolean rate =
        outcome.kind() == Outcome.Kind.COUNT
            && question.countedAs().equals(Optional.of(CountedAs.EVENTS));
    return rate ? RATE : MEAN;
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
      new QuantityCells(row, question.outcome(), question.conversions(), quantity.summary())
          .fill(cells, warnings);
    } else if (row.value() instanceof ReportedValue.Tally tally) {
      cells.put("events", new RowValue.Number(tally.events()));
      OptionalInt patients = row.speaksOf();
      patients.ifPresent(count -> cells.put("personTime", new RowValue.Number(count)));
      if (tally.among().isEmpty() && patients.isPresent()) {
        warnings.add(QuantityCells.ofTheArm(row, patients.getAsInt()));
      }
    }
  }

  private static Result.Warning warning(LeftOut left) {
    return Result.Warning.of(left.code(), left.label() + ": " + left.message(), left.label())
        .about(Optional.of(left.studyId()), Optional.of(left.armId()));
  }
}
