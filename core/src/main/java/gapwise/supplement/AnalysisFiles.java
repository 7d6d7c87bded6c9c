package gapwise.supplement;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.result.Origin;
import gapwise.analysis.result.Result;
import gapwise.answer.Answer;
import gapwise.answer.Answers;
import gapwise.answer.Cited;
import gapwise.answer.Edition;
import gapwise.answer.LengthAnswer;
import gapwise.answer.ResultFigures;
import gapwise.datapackage.PackageWriter;
import gapwise.figure.Figure;
import gapwise.figure.Reference;
import gapwise.figure.file.CsvCell;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.report.MethodsParagraph;
import gapwise.selection.LeftOut;
import gapwise.selection.SelectedRow;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** The files of every analysis of a supplement, and the papers that they cite. */
final class AnalysisFiles {
  private final PackageWriter writer;
  private final Edition edition;
  private final FigureFiles figures;

  AnalysisFiles(PackageWriter writer, Edition edition, FigureFiles figures) {
    this.writer = writer;
    this.edition = edition;
    this.figures = figures;
  }

  /**
   * An analysis as it came out of the data of the supplement.
   *
   * @param of as it came out of the evidence base
   * @param name under which it is written
   * @param ran the same from the data of the supplement
   */
  record Ran(Analysis of, WrittenAnalysis name, Answers.Ran ran) {
    Result result() {
      return ((PlanOutcome.Done) ran.outcome()).result();
    }
  }

  /**
   * All of them.
   *
   * @param numbers how many numbers were held against those of the evidence base
   */
  record Found(List<Ran> analyses, int numbers) {
    Found {
      analyses = List.copyOf(analyses);
    }

    /** Studies that some analysis counts. */
    Set<String> used() {
      Set<String> ids = new TreeSet<>();
      for (Ran one : analyses) {
        one.ran()
            .answer()
            .ifPresent(
                answer ->
                    answer.selection().rows().stream()
                        .map(row -> row.study().id())
                        .forEach(ids::add));
      }
      return ids;
    }
  }

  /**
   * Runs them on the data of the supplement.
   *
   * @throws WrongInputException where a result is none or another than before
   */
  static Found run(OwnEvidence own, List<Analysis> analyses) {
    List<Ran> found = new ArrayList<>();
    int numbers = 0;
    for (Analysis analysis : analyses) {
      String number = String.format(java.util.Locale.ROOT, "%02d", found.size() + 1);
      WrittenAnalysis name =
          new WrittenAnalysis(
              number + "-" + analysis.name(),
              analysis.title(),
              analysis.asking(),
              PlanTables.of(analysis.plan()));
      Answers.Ran ran = own.run(analysis.asking(), analysis.plan().toString(), analysis.folder());
      numbers += requireSame(analysis, ran.outcome());
      found.add(new Ran(analysis, name, ran));
    }
    return new Found(found, numbers);
  }

  private static int requireSame(Analysis analysis, PlanOutcome outcome) {
    if (analysis.outcome() instanceof PlanOutcome.Wrong wrong) {
      throw new WrongInputException(wrong.problems());
    }
    if (outcome instanceof PlanOutcome.Wrong wrong) {
      throw new WrongInputException(wrong.problems());
    }
    // The hash is over everything that was settled of any study, and here over that of these alone.
    Comparison compared =
        new Comparison(0, Set.of("data.sha256")).of(analysis.outcome().json(), outcome.json());
    List<Difference> differences = new ArrayList<>(compared.numbers());
    differences.addAll(compared.words());
    if (!differences.isEmpty()) {
      Difference first = differences.get(0);
      throw new WrongInputException(
          List.of(
              new Problem(
                  analysis.title(),
                  "supplement-differs",
                  "From its own data alone the supplement would tell "
                      + first.field()
                      + " as "
                      + first.after()
                      + ", and the evidence base tells "
                      + first.before()
                      + ". Nothing was written. Ask with filters in place of words of a search, and"
                      + " report this if it stays.")));
    }
    return compared.compared();
  }

  /** Writes plans, results, methods, figures, tables and citations. */
  void write(Found found) throws IOException {
    Set<String> methods = new LinkedHashSet<>();
    List<SelectedRow> rows = new ArrayList<>();
    for (Ran one : found.analyses()) {
      methods.addAll(write(one).references());
      one.ran().answer().ifPresent(answer -> rows.addAll(answer.selection().rows()));
    }
    Citations.write(writer, "studies", Citations.ofStudies(), cited(rows));
    Citations.write(
        writer, "methods", say("supplement.citations-of-methods"), Citations.ofMethods(methods));
  }

  private static List<Reference> cited(List<SelectedRow> rows) {
    return Cited.of(rows).stream().sorted(java.util.Comparator.comparing(Reference::key)).toList();
  }

  private MethodsParagraph write(Ran one) throws IOException {
    WrittenAnalysis name = one.name();
    Origin origin = new Origin(edition.program(), edition.change(), edition.date());
    json(name.plan(), say("supplement.plan-of", Map.of("title", name.title())), one.of().plan());
    for (String table : name.tables()) {
      table(name, table, one.of().folder().orElseThrow().resolve(table));
    }
    json(
        name.result(),
        say("supplement.result-of", Map.of("title", name.title())),
        one.ran().outcome().json(origin));
    MethodsParagraph methods = MethodsParagraph.of(one.result(), origin);
    writer.addText(
        SupplementForm.file(
            name.methods(),
            SupplementForm.TEXT_TYPE,
            say("supplement.methods-of", Map.of("title", name.title()))),
        methods.text());
    for (Map.Entry<String, Figure> figure : figures(one).entrySet()) {
      figures.write(name.name() + "-" + figure.getKey(), figure.getValue());
    }
    Optional<Answer> answer = one.ran().answer();
    if (answer.isPresent() && !answer.get().selection().leftOut().isEmpty()) {
      leftOut(name, answer.get().selection().leftOut());
    }
    return methods;
  }

  /** Of many numbers of one method each a table of all is written beside, and no figures. */
  private Map<String, Figure> figures(Ran one) {
    if (one.of().asking() == Asking.ONE_METHOD) {
      return Map.of();
    }
    Map<String, Figure> drawn = new LinkedHashMap<>();
    Optional<LengthAnswer> length = one.of().length();
    if (length.isPresent() && one.ran().answer().isPresent()) {
      LengthAnswer told = length.get();
      new LengthAnswer(one.ran().answer().get(), told.asked(), told.drawn(), told.notes())
          .large(edition)
          .ifPresent(figure -> drawn.put("figure", figure));
    } else {
      drawn.putAll(ResultFigures.of(one.result(), one.ran().answer(), edition));
    }
    return drawn;
  }

  private void json(String path, String description, ObjectNode json) throws IOException {
    writer.addText(
        SupplementForm.file(path, SupplementForm.JSON_TYPE, description), PackageWriter.text(json));
  }

  private void table(WrittenAnalysis name, String table, Path file) throws IOException {
    writer.add(
        SupplementForm.file(
            name.table(table),
            SupplementForm.CSV_TYPE,
            say("supplement.table-of", Map.of("title", name.title()))),
        target -> Files.copy(file, target));
  }

  private void leftOut(WrittenAnalysis name, List<LeftOut> leftOut) throws IOException {
    StringBuilder text = new StringBuilder();
    CSVFormat format =
        CSVFormat.RFC4180
            .builder()
            .setHeader("study_id", "arm_id", "label", "code", "reason")
            .get();
    CSVPrinter printer = new CSVPrinter(text, format);
    for (LeftOut one : leftOut) {
      printer.printRecord(
          CsvCell.text(one.studyId()),
          CsvCell.text(one.armId()),
          CsvCell.text(one.label()),
          one.code(),
          CsvCell.text(one.message()));
    }
    printer.flush();
    writer.addText(
        SupplementForm.file(
            "tables/" + name.name() + "-left-out.csv",
            SupplementForm.CSV_TYPE,
            say("supplement.left-out-of", Map.of("title", name.title()))),
        text.toString());
  }
}
