package gapwise.analysis;

import gapwise.analysis.agreement.AgreementTask;
import gapwise.analysis.curves.CurveTask;
import gapwise.analysis.curves.SurvivalTask;
import gapwise.analysis.multiverse.MultiverseTask;
import gapwise.analysis.patients.PatientsTask;
import gapwise.analysis.plan.Task;
import gapwise.analysis.single.ConvertTask;
import gapwise.analysis.single.IntervalTask;
import gapwise.analysis.synthesis.SynthesisTask;
import gapwise.analysis.trial.TrialTask;
import java.util.List;

/** All tasks a plan can ask, the default first. A new one is a folder beside these and a line. */
final class Tasks {
  private static final List<Task> ALL =
      List.of(
          new SynthesisTask(),
          new MultiverseTask(),
          new IntervalTask(),
          new ConvertTask(),
          new AgreementTask(),
          new CurveTask(),
          new SurvivalTask(),
          new PatientsTask(),
          new TrialTask());

  private Tasks() {}

  /** All of them, in the order of the schema. */
  static List<Task> all() {
    return ALL;
  }

  /** The task of a word; the default for an empty one. */
  static Task named(String word) {
    return ALL.stream().filter(task -> task.word().equals(word)).findFirst().orElse(ALL.get(0));
  }
}
