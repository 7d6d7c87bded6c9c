package gapwise.analysis.single;

import gapwise.analysis.pooling.StudyWarnings;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.Columns;
import gapwise.analysis.rows.DataTable;
import gapwise.analysis.rows.ReportedRow;
import gapwise.effect.FiveNumbers;
import gapwise.effect.MedianConversion;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** The task {@code convert}. */
final class ConvertRun {
  private static final List<String> ROLES =
      List.of("n", "median", "min", "q1", "q3", "max", "study");

  private ConvertRun() {}

  static Result of(ConvertPlan plan, DataTable table) {
    Problems problems = new Problems();
    Columns columns =
        Columns.resolve(plan.head().named(), table, ROLES, List.of("n", "median"), problems);
    List<ConversionsResult.Conversion> conversions = new ArrayList<>();
    List<Result.Warning> warnings = new ArrayList<>(table.warnings());
    double patients = 0;
    for (DataTable.Row row : table.rows()) {
      ReportedRow reported = new ReportedRow(columns, row, problems);
      OptionalDouble n = reported.requiredCount("n", 1);
      Optional<FiveNumbers> numbers = FiveNumbers.read(reported, "", n.orElse(1));
      if (n.isEmpty() || numbers.isEmpty()) {
        if (numbers.isEmpty()) {
          reported.missing("median with a range or quartiles");
        }
        reported.lacking().ifPresent(warnings::add);
        continue;
      }
      patients += n.getAsDouble();
      conversions.add(conversion(plan, columns.label(row), numbers.get()));
      if (numbers.get().looksSkewed()) {
        warnings.add(StudyWarnings.looksSkewed(columns.label(row)));
      }
    }
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    Result.Data data =
        new Result.Data(
            table.rows().size(),
            table.rows().size(),
            OptionalDouble.of(patients),
            OptionalDouble.empty(),
            table.sha256());
    return new Result(plan.head().json(), data, new ConversionsResult(conversions), warnings);
  }

  private static ConversionsResult.Conversion conversion(
      ConvertPlan plan, String label, FiveNumbers numbers) {
    List<ConversionsResult.Converted> values = new ArrayList<>();
    for (MedianConversion method : plan.methods()) {
      OptionalDouble mean = method.mean(numbers);
      OptionalDouble sd = method.sd(numbers);
      if (mean.isPresent() || sd.isPresent()) {
        values.add(new ConversionsResult.Converted(method.word(), mean, sd));
      }
    }
    return new ConversionsResult.Conversion(
        label, numbers.beside().name().toLowerCase(Locale.ROOT), values);
  }
}
