package gapwise.analysis;

import gapwise.effect.Measure;
import gapwise.effect.StudyData;
import java.util.ArrayList;
import java.util.List;

/** The task {@code synthesis}: rows to effects, effects to the parts the plan asks for. */
final class SynthesisRun {
  private SynthesisRun() {}

  static <D extends StudyData> Result of(SynthesisPlan plan, Measure<D> measure, DataTable table) {
    Studies<D> studies = Studies.read(plan, measure, table);
    Synthesis<D> synthesis =
        new Synthesis<>(plan, measure, studies, table, Pooler.of(plan, studies));
    List<Result.Warning> warnings = new ArrayList<>(table.warnings());
    warnings.addAll(UnusedSettings.of(plan.json()));
    warnings.addAll(studies.warnings());
    ResultBuilder result = new ResultBuilder(plan.json(), StudyTable.data(studies, table));
    for (SynthesisPart part : SynthesisParts.of(plan)) {
      part.add(synthesis, result, warnings);
    }
    return result.with(warnings);
  }
}
