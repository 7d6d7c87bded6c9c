package gapwise.printed;

import gapwise.evidence.unit.Unit;
import java.util.List;
import java.util.Optional;

/** Gives proposals their unit, or asks for it. */
final class Units {
  private Units() {}

  /**
   * @param printed the unit in the text itself, which counts before that of the header
   */
  static List<Proposed> with(
      Optional<Unit> printed,
      List<Proposed> proposals,
      Wanted wanted,
      Setting setting,
      String text) {
    Optional<Unit> fromHeader = setting.unit().filter(unit -> fits(unit, wanted));
    Optional<Unit> unit = printed.or(() -> fromHeader).or(wanted::usualUnit);
    if (printed.isPresent() && !fits(printed.get(), wanted)) {
      return asked(
          proposals,
          unit,
          "Found '"
              + text
              + "' for "
              + wanted.name()
              + ", which is not measured in "
              + printed.get().symbol()
              + ". Check what the column holds.");
    }
    if (unit.isEmpty() && wanted.dimension().isPresent()) {
      return asked(
          proposals,
          unit,
          "Found '"
              + text
              + "' for "
              + wanted.name()
              + " without a unit, in the cell or the header. Say in which unit it is.");
    }
    return proposals.stream().map(one -> with(one, unit)).toList();
  }

  static boolean fits(Unit unit, Wanted wanted) {
    return wanted.dimension().filter(dimension -> dimension != unit.dimension()).isEmpty();
  }

  private static List<Proposed> asked(List<Proposed> proposals, Optional<Unit> unit, String why) {
    return proposals.stream().map(one -> with(one, unit).askedBecause(Doubt.UNIT, why)).toList();
  }

  private static Proposed with(Proposed one, Optional<Unit> unit) {
    return one.column().endsWith("_n") || one.column().equals("n")
        ? one
        : new Proposed(one.column(), one.text(), unit, one.state(), one.doubt(), one.why());
  }
}
