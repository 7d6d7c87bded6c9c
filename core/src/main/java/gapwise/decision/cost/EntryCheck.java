package gapwise.decision.cost;

import gapwise.problem.Problem;
import gapwise.problem.Problems;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What is missing of the entries, or cannot be.
 *
 * @param entries as far as entered
 * @param methods whose costs are asked
 */
record EntryCheck(CostEntries entries, List<MethodCourse> methods) {
  List<Problem> problems() {
    Problems found = new Problems();
    if (entries.currency().isBlank()) {
      missing(found, "currency", "the currency of all money, such as EUR");
    }
    if (entries.priceYear().isEmpty()) {
      missing(found, "price-year", "the year of all prices");
    }
    for (Entry entry : Entry.values()) {
      Optional.ofNullable(entries.amounts().get(entry))
          .ifPresentOrElse(
              amount -> amount(found, entry, amount),
              () -> missing(found, entry.code(), entry.label()));
    }
    for (MethodCourse method : methods) {
      String where = "treatment " + method.code();
      Optional.ofNullable(entries.treatments().get(method.code()))
          .ifPresentOrElse(
              amount -> range(found, where, amount.mean(), 0, Entry.PROSTHESIS.most()),
              () ->
                  missing(found, where, "the cost of the planned operations of " + method.label()));
    }
    utilities(found);
    return found.list();
  }

  private static void missing(Problems found, String where, String what) {
    found.add(where, "missing-entry", "missing: " + what);
  }

  private static void amount(Problems found, Entry entry, Amount amount) {
    range(found, entry.code(), amount.mean(), entry.least(), entry.most());
    if (entry.kind() == Entry.Kind.NUMBER && amount.sd() > 0) {
      found.add(
          entry.code(),
          "deviation-of-a-known-number",
          entry.label() + " is taken as known, yet has a standard deviation; only money may");
    }
  }

  private static void range(Problems found, String where, double value, double least, double most) {
    if (!(value >= least && value <= most)) {
      found.add(
          where, "entry-out-of-range", "must lie from " + least + " to " + most + ", was " + value);
    }
  }

  private void utilities(Problems found) {
    Map<String, Double> byCode = new TreeMap<>();
    entries.utilities().forEach((health, worth) -> byCode.put(health.code(), worth));
    byCode.forEach(
        (code, worth) -> {
          if (!(worth >= -1 && worth <= 1)) {
            found.add(
                "utility " + code,
                "entry-out-of-range",
                "a utility lies from -1, worse than being dead, to 1, full health; was " + worth);
          }
        });
    if (!entries.utilities().isEmpty() && !entries.hasUtilities()) {
      for (Health health : Health.values()) {
        if (!entries.utilities().containsKey(health)) {
          found.add(
              "utility " + health.code(),
              "missing-entry",
              "missing: the worth of a year "
                  + health.label()
                  + ". Enter all utilities or none; with none, years healed are counted");
        }
      }
    }
  }
}
