package gapwise.printed;

import gapwise.evidence.unit.Unit;
import gapwise.printed.PrintedValue.Amount;
import gapwise.printed.PrintedValue.Bound;
import gapwise.printed.PrintedValue.Dated;
import gapwise.printed.PrintedValue.Share;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a text gives to a column of one number. */
record Singles(String text, Wanted wanted, Setting setting) {
  private static final int FIRST_YEAR = 1900;
  private static final int LAST_YEAR = 2100;

  List<Proposed> of(PrintedValue value) {
    if (value instanceof Amount amount) {
      return switch (wanted.kind()) {
        case YEAR -> year(amount);
        case MEASURE -> measure(amount);
        default -> number(amount);
      };
    }
    if (value instanceof Dated) {
      return List.of(
          question(
              Doubt.DATE,
              "Found the date '"
                  + text
                  + "' where a number is wanted. Write what the paper prints."));
    }
    if (value instanceof Share share
        && share.count().isPresent()
        && wanted.kind() == Wanted.Kind.NUMBER) {
      return List.of(
          Proposed.taken(
              wanted.base(), Proposer.plain(share.count().getAsDouble()), Optional.empty()));
    }
    if (wanted.kind() == Wanted.Kind.MEASURE) {
      return event();
    }
    return List.of(
        question(
            Doubt.NUMBER,
            "Found '" + text + "' where one number is wanted. Write the number, or leave it."));
  }

  private Proposed question(Doubt doubt, String why) {
    return Proposed.asked(wanted.base(), "", Optional.empty(), doubt, why);
  }

  private List<Proposed> year(Amount amount) {
    boolean sound = amount.whole() && amount.value() >= FIRST_YEAR && amount.value() <= LAST_YEAR;
    return List.of(
        sound
            ? Proposed.taken(wanted.base(), Proposer.plain(amount.value()), Optional.empty())
            : question(
                Doubt.NUMBER,
                "Found '" + text + "' where a year is wanted. Write the year with four digits."));
  }

  private List<Proposed> number(Amount amount) {
    boolean whole = wanted.kind() != Wanted.Kind.WHOLE || (amount.whole() && amount.value() >= 0);
    if (!whole
        || amount.unit().isPresent()
        || amount.bound() == Bound.ABOVE
        || amount.bound() == Bound.BELOW) {
      return List.of(
          question(
              Doubt.NUMBER,
              "Found '"
                  + text
                  + "' where a number without a unit is wanted. Write the number, or leave it."));
    }
    Proposed taken =
        Proposed.taken(wanted.base(), Proposer.plain(amount.value()), Optional.empty());
    return List.of(
        amount.bound() == Bound.EXACT
            ? taken
            : taken.askedBecause(
                Doubt.NUMBER,
                "Found '" + text + "', an approximate number. Say whether it may stand as it is."));
  }

  private List<Proposed> measure(Amount amount) {
    if (amount.bound() == Bound.ABOVE || amount.bound() == Bound.BELOW) {
      return List.of(
          Proposed.asked(
              wanted.base(),
              Proposer.plain(amount.value()),
              amount.unit().or(setting::unit),
              Doubt.NUMBER,
              "Found '" + text + "', a limit and no number. Say what is to be written."));
    }
    List<Proposed> proposals =
        new ArrayList<>(
            List.of(
                Proposed.taken(wanted.base(), Proposer.plain(amount.value()), Optional.empty())));
    if (amount.bound() == Bound.ABOUT) {
      if (wanted.base().equals("defect_length")) {
        proposals.add(Proposed.taken("defect_length_approximate", "yes", Optional.empty()));
      } else {
        proposals.replaceAll(
            one ->
                one.askedBecause(
                    Doubt.NUMBER,
                    "Found '"
                        + text
                        + "', an approximate number. Say whether it may stand as it is."));
      }
    }
    List<Proposed> withUnit = Units.with(amount.unit(), proposals, wanted, setting, text);
    return withUnit.stream().map(this::inColumnsUnit).toList();
  }

  /** The age of a patient has no unit of its own in the template. */
  private Proposed inColumnsUnit(Proposed one) {
    if (one.column().equals("defect_length_approximate")) {
      return new Proposed(
          one.column(), one.text(), Optional.empty(), one.state(), one.doubt(), one.why());
    }
    Optional<Unit> unit =
        one.unit().filter(u -> u.dimension() == Unit.Dimension.TIME && u != Unit.YEARS);
    if (!wanted.base().equals("age") || unit.isEmpty() || one.text().isEmpty()) {
      return one;
    }
    double years =
        Math.round(unit.get().to(Unit.YEARS, Double.parseDouble(one.text())) * 100) / 100.0;
    return new Proposed(
            one.column(),
            Proposer.plain(years),
            Optional.of(Unit.YEARS),
            one.state(),
            one.doubt(),
            one.why())
        .told(
            Doubt.CONVERTED,
            "Found "
                + one.text()
                + " "
                + unit.get().symbol()
                + ". The template keeps ages in years: "
                + Proposer.plain(years)
                + ".");
  }

  /** Words where a time is wanted may tell that what is timed never happened. */
  private List<Proposed> event() {
    Optional<Proposed> told = TimedEvents.of(text, wanted);
    return List.of(
        told.orElseGet(
            () ->
                question(
                    Doubt.WORD,
                    "Found '"
                        + text
                        + "' where a number is wanted. Write the number, or leave it.")));
  }
}
