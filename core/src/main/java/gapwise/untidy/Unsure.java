package gapwise.untidy;

import gapwise.evidence.vocabulary.Outcome;
import gapwise.printed.Doubt;
import gapwise.printed.Proposed;
import gapwise.printed.Wanted;
import java.util.List;
import java.util.Optional;

/** Values that are asked for, since nobody may guess what stands above or in them. */
final class Unsure {
  private Unsure() {}

  /** Grades of a group are counts in words, which nobody may guess. */
  static List<Proposed> graded(Wanted wanted, List<Proposed> values, String text) {
    boolean grades = wanted.into().equals("outcomes") && wanted.kind() == Wanted.Kind.TEXT;
    return grades
        ? values.stream()
            .map(
                one ->
                    one.askedBecause(
                        Doubt.WORD, "Found '" + text + "'. Write the grades with their counts."))
            .toList()
        : values;
  }

  /** The same asked where the heading does not say enough. */
  static List<Proposed> of(Heading heading, Wanted wanted, List<Proposed> values) {
    if (heading.target().equals("row-number")) {
      return asked(
          values,
          "'" + heading.words() + "' does not say what is counted. Say whether it is patients.");
    }
    if (heading.target().equals("infection-unclear")) {
      return asked(
          values,
          "'" + heading.words() + "' does not say whether before or after treatment. Say which.");
    }
    Optional<Concept> concept = heading.concept().filter(found -> !found.isSure());
    if (concept.isPresent()) {
      String why =
          concept.get().rivals().isEmpty()
              ? "In '"
                  + heading.words()
                  + "' the words '"
                  + String.join(" ", concept.get().over())
                  + "' are not understood"
              : "'" + heading.words() + "' may mean several things";
      return asked(
          values,
          why
              + ". Say whether it is "
              + wanted.outcome().map(Outcome::label).orElse(wanted.base().replace('_', ' '))
              + ".");
    }
    return values;
  }

  private static List<Proposed> asked(List<Proposed> values, String why) {
    return values.stream().map(one -> one.askedBecause(Doubt.COLUMN, why)).toList();
  }

  /** The same asked where nothing says that the rows of a table are groups. */
  static List<Proposed> whose(List<Proposed> values) {
    return asked(
        values,
        "Nothing says that the rows of this table are groups of patients. They may be traits that"
            + " patients of one group have. Say which.");
  }
}
