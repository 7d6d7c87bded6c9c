package gapwise.server.answer;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.EvidenceRows;
import gapwise.analysis.Result;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.selection.Question;
import gapwise.selection.Selection;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** Gives plans the rows of the evidence base that they ask for. */
public final class SelectedEvidence implements EvidenceRows {
  private static final Set<String> MEASURES = Set.of("proportion", "mean", "incidence-rate");

  private final Function<Question, Selection> selections;

  /**
   * @param selections answers a question with its rows
   */
  public SelectedEvidence(Function<Question, Selection> selections) {
    this.selections = selections;
  }

  @Override
  public Selected rows(JsonNode evidence, String measure) {
    if (!MEASURES.contains(measure)) {
      throw new WrongInputException(
          List.of(
              new Problem(
                  "measure",
                  "measure-not-for-evidence",
                  "found '"
                      + measure
                      + "'; groups of patients are pooled one by one as proportion, mean or"
                      + " incidence-rate")));
    }
    Selection selection = selections.apply(EvidenceSource.read(evidence));
    PlanRows rows = PlanRows.of(selection, measure);
    return new Selected(
        rows.lines().stream().map(PlanRows.Line::cells).toList(),
        warnings(selection, rows),
        selection.dataSha256());
  }

  private static List<Result.Warning> warnings(Selection selection, PlanRows rows) {
    List<Result.Warning> warnings = new ArrayList<>();
    selection.notes().forEach(note -> warnings.add(Result.Warning.of(note.code(), note.message())));
    selection
        .leftOut()
        .forEach(
            one ->
                warnings.add(
                    new Result.Warning(one.code(), one.message(), Optional.of(one.label()))));
    rows.otherForm()
        .forEach(
            row ->
                warnings.add(
                    Result.Warning.of(
                        "form-does-not-fit",
                        "The numbers have another form than this measure needs.",
                        row.label())));
    return warnings;
  }
}
