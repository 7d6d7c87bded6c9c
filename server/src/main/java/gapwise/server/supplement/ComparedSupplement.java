package gapwise.server.supplement;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.Answer;
import gapwise.answer.Answers;
import gapwise.answer.Edition;
import gapwise.decision.findings.Findings;
import gapwise.decision.option.Cell;
import gapwise.decision.option.Column;
import gapwise.decision.option.Option;
import gapwise.decision.option.OptionQuestion;
import gapwise.decision.option.OptionTable;
import gapwise.figure.Figure;
import gapwise.server.address.Address;
import gapwise.server.address.OptionAddress;
import gapwise.server.address.PagePaths;
import gapwise.server.home.Evidence;
import gapwise.server.home.Pieces;
import gapwise.server.report.FindingsCsv;
import gapwise.server.report.FindingsDocument;
import gapwise.server.report.Prepared;
import gapwise.server.report.SituationWords;
import gapwise.supplement.Analysis;
import gapwise.supplement.Asking;
import gapwise.supplement.Beside;
import gapwise.supplement.SupplementWriter;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Every number of a table of methods side by side as an analysis, and the table itself. */
final class ComparedSupplement {
  private final Evidence evidence;
  private final Edition edition;

  ComparedSupplement(Evidence evidence, Edition edition) {
    this.evidence = evidence;
    this.edition = edition;
  }

  SupplementWriter.Wish of(Address address, Optional<Figure> flow) {
    OptionQuestion question = OptionAddress.question(address);
    Pieces.ofCompared(evidence.options(), question).all();
    OptionTable table = evidence.options().table(question);
    List<Analysis> analyses = new ArrayList<>();
    for (Column column : table.columns()) {
      for (Option option : table.options()) {
        if (table.cell(option, column) instanceof Cell.Known) {
          analysis(column, option).ifPresent(analyses::add);
        }
      }
    }
    return new SupplementWriter.Wish(
        SituationWords.title(question.situation()),
        analyses,
        List.of(),
        flow,
        List.of(findings(question, table, address)));
  }

  private Optional<Analysis> analysis(Column column, Option option) {
    Answer answer =
        Answers.numbers(evidence.answers().select(column.question(option.method())).byMethod());
    return Analysis.of(
        column.outcome().code() + "-" + option.method().code(), Asking.ONE_METHOD, answer);
  }

  /** The day is that of the last change, so that the same table is the same bytes. */
  private Beside findings(OptionQuestion question, OptionTable table, Address address) {
    FindingsDocument document =
        new FindingsDocument(
            Findings.of(table, evidence.options().compared(question).within()),
            SituationWords.title(question.situation()),
            new Prepared(
                edition,
                address.at(PagePaths.COMPARE),
                edition.date().orElse(LocalDate.EPOCH),
                Optional.empty(),
                evidence.hasInvented()));
    return new Beside(
        "tables/summary-of-findings.csv",
        "text/csv",
        say("supplement.summary-of-findings"),
        FindingsCsv.of(document));
  }
}
