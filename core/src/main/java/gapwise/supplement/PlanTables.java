package gapwise.supplement;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.rows.Source;
import gapwise.analysis.rows.Sources;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import java.util.ArrayList;
import java.util.List;

/** The files that a plan reads beside it. */
final class PlanTables {
  private PlanTables() {}

  /**
   * Their names.
   *
   * @throws WrongInputException for one that lies elsewhere than beside the plan
   */
  static List<String> of(ObjectNode plan) {
    List<Source> all = new ArrayList<>();
    Sources sources = Sources.of(plan);
    sources.first().ifPresent(all::add);
    sources.beside().ifPresent(second -> all.add(second.source()));
    List<String> names = new ArrayList<>();
    for (Source one : all) {
      if (one instanceof Source.Table table) {
        if (!WrittenAnalysis.isTable(table.name())) {
          throw new WrongInputException(
              List.of(
                  new Problem(
                      "source.table",
                      "table-elsewhere",
                      "The table '"
                          + table.name()
                          + "' has to lie in the folder of the plan, under a name of letters, digits,"
                          + " dots and dashes, to be taken into a supplement. Move it there.")));
        }
        if (!names.contains(table.name())) {
          names.add(table.name());
        }
      }
    }
    return names;
  }
}
