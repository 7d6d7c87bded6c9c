package gapwise.analysis.network;

import gapwise.analysis.rows.DataTable;
import gapwise.budget.Limit;
import gapwise.budget.Work;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** The treatments that rows name, before anything is made of them. */
final class NamedTreatments {
  /** Where a row may name a treatment. */
  private static final List<String> ROLES = List.of("treatment", "against");

  private NamedTreatments() {}

  /**
   * Comparisons grow with the square of the treatments and more names are spellings, not
   * treatments: a person may raise the budget's limit, but work without limits keeps the usual one.
   */
  static void refuseTooMany(NetworkPlan plan, DataTable table) {
    Set<String> named = new HashSet<>();
    for (String role : ROLES) {
      String column = plan.head().columns().getOrDefault(role, role);
      table.rows().forEach(row -> named.add(row.text(column)));
    }
    named.remove("");
    long allowed = Work.current().budget().most(Limit.TREATMENTS);
    long most = allowed == Long.MAX_VALUE ? Limit.TREATMENTS.standard() : allowed;
    if (named.size() > most) {
      throw new WrongInputException(
          List.of(
              new Problem(
                  "columns.treatment",
                  "too-many-treatments",
                  "found "
                      + named.size()
                      + " treatments, expected "
                      + most
                      + " at most; put spellings of one treatment together")));
    }
  }
}
