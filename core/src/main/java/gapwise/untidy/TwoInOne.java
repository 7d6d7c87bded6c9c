package gapwise.untidy;

import gapwise.printed.Doubt;
import gapwise.printed.Printed;
import gapwise.printed.PrintedValue;
import gapwise.printed.Proposed;
import gapwise.printed.Proposer;
import gapwise.printed.Setting;
import gapwise.printed.Wanted;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Cells that hold two values in one: "34/m" of a patient, "15/8" men and women of a group. */
record TwoInOne(Fields out) {
  private static final Pattern TWO_COUNTS =
      Pattern.compile("(\\d{1,5}) ?(?:/|\\(|,|;) ?(\\d{1,5})\\)?");

  private static final Pattern AGE_AND_SEX =
      Pattern.compile("(\\d{1,3}) ?[/,; ]? ?(\\p{L}{1,8})|(\\p{L}{1,8}) ?[/,; ]? ?(\\d{1,3})");

  /** "34/m": an age and a sex in one cell. */
  void ageAndSex(Identity.Taken taken, FoundField.Whose whose) {
    Matcher both = AGE_AND_SEX.matcher(Printed.plain(taken.from().text()));
    if (!both.matches()) {
      out.add(
          "patients",
          whose,
          taken,
          List.of(
              Proposed.asked(
                  "age",
                  "",
                  Optional.empty(),
                  Doubt.NUMBER,
                  "Found '" + taken.from().text() + "' for age and sex. Write both.")));
      return;
    }
    String age = both.group(1) == null ? both.group(4) : both.group(1);
    String sex = both.group(2) == null ? both.group(3) : both.group(2);
    out.add(
        "patients",
        whose,
        taken,
        Proposer.propose(age, Wanted.column("patients", "age"), Setting.none()));
    out.add(
        "patients",
        whose,
        taken,
        Proposer.propose(sex, Wanted.column("patients", "sex"), Setting.none()));
  }

  /** "15/8" under "M/F": proven where both add to the group. */
  void menAndWomen(Identity.Taken taken, FoundField.Whose whose, Kind kind) {
    if (kind == Kind.PATIENTS) {
      out.add(
          "patients",
          whose,
          taken,
          Proposer.propose(taken.from().text(), Wanted.column("patients", "sex"), Setting.none()));
      return;
    }
    String bar = taken.from().text().replaceFirst("(?<=\\d) ?: ?(?=\\d)", "/");
    if (Printed.read(bar) instanceof PrintedValue.Share share
        && share.count().isPresent()
        && share.total().isPresent()) {
      double both = share.count().getAsDouble() + share.total().getAsDouble();
      boolean known = out.sizes(whose).contains(both);
      Proposed male =
          Proposed.taken(
              "male", Long.toString((long) share.count().getAsDouble()), Optional.empty());
      boolean proven = known;
      out.add(
          "arms",
          whose,
          taken,
          List.of(
              proven
                  ? male
                  : male.askedBecause(
                      Doubt.DENOMINATOR,
                      "Found '"
                          + taken.from().text()
                          + "' for men and women. Say how many men there were.")));
    } else {
      out.add(
          "arms",
          whose,
          taken,
          List.of(
              Proposed.asked(
                  "male",
                  "",
                  Optional.empty(),
                  Doubt.NUMBER,
                  "Found '"
                      + taken.from().text()
                      + "' for men and women. Say how many men there were.")));
    }
  }

  /** "20/21" or "20 (21)" under "Patients/limbs": both counts, in the order of the header. */
  void patientsAndLimbs(Identity.Taken taken, FoundField.Whose whose, String header) {
    String second = header.toLowerCase(Locale.ROOT).contains("defect") ? "defects" : "limbs";
    Matcher both = TWO_COUNTS.matcher(Printed.plain(taken.from().text()));
    boolean inOrder = header.toLowerCase(Locale.ROOT).matches("[^a-z]*(patient|case).*");
    if (!both.matches() || !inOrder) {
      out.add(
          "arms",
          whose,
          taken,
          List.of(
              Proposed.asked(
                  "patients",
                  taken.from().text().matches("\\d{1,5}") ? taken.from().text() : "",
                  Optional.empty(),
                  Doubt.NUMBER,
                  "Found '"
                      + taken.from().text()
                      + "' under '"
                      + header
                      + "'. Write both counts.")));
      return;
    }
    out.size(whose, Double.parseDouble(both.group(1)));
    out.size(whose, Double.parseDouble(both.group(2)));
    out.add(
        "arms",
        whose,
        taken,
        List.of(
            Proposed.taken("patients", both.group(1), Optional.empty()),
            Proposed.taken(second, both.group(2), Optional.empty())));
  }
}
