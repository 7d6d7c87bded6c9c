package gapwise.printed;

import gapwise.evidence.unit.Unit;
import gapwise.printed.PrintedValue.Amount;
import gapwise.printed.PrintedValue.Bound;
import gapwise.printed.PrintedValue.Dated;
import gapwise.printed.PrintedValue.Deviation;
import gapwise.printed.PrintedValue.Limits;
import gapwise.printed.PrintedValue.Pair;
import gapwise.printed.PrintedValue.Summary;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * What a text gives to a mean or median with its spread. Only words make a number in brackets a
 * standard deviation or a pair a range; without them the pair goes where the template keeps what is
 * not stated.
 */
record Summaries(String text, Wanted wanted, Setting setting) {

  List<Proposed> of(PrintedValue value) {
    if (value instanceof Amount amount) {
      return amount(amount);
    }
    if (value instanceof Summary summary) {
      return withUnit(summary.unit(), summary(summary));
    }
    if (value instanceof Dated dated) {
      return dated(dated);
    }
    return List.of(
        question(
            Doubt.WORD,
            "Found '" + text + "' where a number is wanted. Write the number, or leave it."));
  }

  private Proposed question(Doubt doubt, String why) {
    return Proposed.asked(wanted.part("mean"), "", Optional.empty(), doubt, why);
  }

  private Proposed taken(String part, double number) {
    return Proposed.taken(wanted.part(part), Proposer.plain(number), Optional.empty());
  }

  private List<Proposed> amount(Amount amount) {
    if (amount.bound() == Bound.ABOVE || amount.bound() == Bound.BELOW) {
      return List.of(
          question(
              Doubt.NUMBER,
              "Found '"
                  + text
                  + "', a limit and no mean. Put it into the words of the paper, or leave it."));
    }
    Optional<Statistic> said =
        amount.named().isPresent()
            ? amount.named()
            : setting.said().one(Statistic.MEAN, Statistic.MEDIAN).or(() -> single());
    Optional<String> part = said.flatMap(Summaries::part);
    List<Proposed> proposals = new ArrayList<>();
    if (part.isPresent()) {
      proposals.add(taken(part.get(), amount.value()));
    } else if (setting.said().says(Statistic.COUNT)) {
      proposals.add(taken("n", amount.value()));
    } else {
      proposals.add(
          taken("mean", amount.value())
              .askedBecause(
                  Doubt.CENTRE,
                  "Found "
                      + text
                      + " for "
                      + wanted.name()
                      + ", and nothing says whether it is a mean or a median. Say which."));
    }
    if (amount.bound() == Bound.ABOUT) {
      proposals.replaceAll(
          one ->
              one.askedBecause(
                  Doubt.NUMBER,
                  "Found '"
                      + text
                      + "', an approximate number. Say whether it may stand as it is."));
    }
    return withUnit(amount.unit(), proposals);
  }

  /** What a header says of a column of single numbers, where it says one thing. */
  private Optional<Statistic> single() {
    return setting
        .said()
        .one(
            Statistic.SD,
            Statistic.SE,
            Statistic.MINIMUM,
            Statistic.MAXIMUM,
            Statistic.FIRST_QUARTILE,
            Statistic.THIRD_QUARTILE);
  }

  private static Optional<String> part(Statistic statistic) {
    return switch (statistic) {
      case MEAN -> Optional.of("mean");
      case MEDIAN -> Optional.of("median");
      case SD -> Optional.of("sd");
      case SE -> Optional.of("se");
      case MINIMUM -> Optional.of("min");
      case MAXIMUM -> Optional.of("max");
      case FIRST_QUARTILE -> Optional.of("q1");
      case THIRD_QUARTILE -> Optional.of("q3");
      default -> Optional.empty();
    };
  }

  private List<Proposed> summary(Summary summary) {
    Said said = setting.said();
    Optional<Statistic> centre =
        summary.said().or(() -> said.one(Statistic.MEAN, Statistic.MEDIAN));
    List<Proposed> proposals = new ArrayList<>();
    boolean unstated = false;
    for (Limits limits : summary.limits()) {
      Optional<Statistic> kind = limits.said().or(() -> limitsSaid(summary));
      if (limits.low() > limits.high()) {
        proposals.add(
            question(
                Doubt.CONTRADICTION,
                "Found '"
                    + text
                    + "': the first limit is larger than the second. Check it against the paper."));
      } else if (kind.isPresent()) {
        limits(kind.get(), limits, proposals);
      } else {
        unstated = true;
      }
    }
    Optional<Deviation> deviation = summary.deviation();
    Optional<Statistic> spread =
        deviation.flatMap(one -> one.said().or(() -> said.one(Statistic.SD, Statistic.SE)));
    if (deviation.isPresent() && spread.isPresent() && spread.get() != Statistic.QUARTILES) {
      proposals.add(0, taken(spread.get() == Statistic.SD ? "sd" : "se", deviation.get().value()));
    } else if (deviation.isPresent()) {
      unstated = true;
    }
    boolean plusMinus = deviation.filter(Deviation::plusMinus).isPresent();
    if (summary.centre().isPresent()) {
      proposals.add(0, centre(summary, centre, plusMinus, unstated));
    }
    if (unstated) {
      unstated(summary, centre, plusMinus, proposals);
    }
    return withoutBareOpen(proposals);
  }

  private Optional<Statistic> limitsSaid(Summary summary) {
    Optional<Statistic> one =
        setting.said().one(Statistic.RANGE, Statistic.QUARTILES, Statistic.CONFIDENCE);
    if (one.isEmpty()
        && setting.said().says(Statistic.MINIMUM)
        && setting.said().says(Statistic.MAXIMUM)) {
      return Optional.of(Statistic.RANGE);
    }
    // A median with what is called its range may mean the range between quartiles, but says range.
    return summary.limits().size() == 1 ? one : Optional.empty();
  }

  private void limits(Statistic kind, Limits limits, List<Proposed> proposals) {
    String low = kind == Statistic.RANGE ? "min" : kind == Statistic.QUARTILES ? "q1" : "ci_lower";
    String high = kind == Statistic.RANGE ? "max" : kind == Statistic.QUARTILES ? "q3" : "ci_upper";
    proposals.add(taken(low, limits.low()));
    proposals.add(taken(high, limits.high()));
  }

  private Proposed centre(
      Summary summary, Optional<Statistic> said, boolean plusMinus, boolean unstated) {
    Proposed mean =
        taken(
            said.filter(Statistic.MEDIAN::equals).isPresent() ? "median" : "mean",
            summary.centre().getAsDouble());
    if (said.filter(Statistic.MEDIAN::equals).isPresent() && plusMinus) {
      return mean.askedBecause(
          Doubt.CENTRE,
          "Found '" + text + "' under a median, where ± would go with a mean. Say which it is.");
    }
    boolean deviates = summary.deviation().isPresent() && (plusMinus || !unstated);
    if (said.isPresent() || deviates) {
      return mean;
    }
    return mean.askedBecause(
        Doubt.CENTRE,
        "Found '"
            + text
            + "' for "
            + wanted.name()
            + ", and nothing says whether the first number is a mean or a median. Say which.");
  }

  /**
   * The template keeps a spread that is not explained. With the number before it, it says too that
   * nobody knows whether that is a mean.
   */
  private void unstated(
      Summary summary, Optional<Statistic> centre, boolean plusMinus, List<Proposed> proposals) {
    String column = wanted.part("spread_unstated");
    String why =
        "Found '"
            + text
            + "' for "
            + wanted.name()
            + ", and nothing says what the spread is. It is kept as not stated. Say if the paper tells.";
    boolean together = centre.isEmpty() && !plusMinus && summary.centre().isPresent();
    String words =
        together
            ? Proposer.plain(summary.centre().getAsDouble()) + " " + summary.spread()
            : summary.spread();
    if (together) {
      proposals.removeIf(one -> one.column().equals(wanted.part("mean")));
      words = asPrinted(summary);
    }
    proposals.add(Proposed.taken(column, words, Optional.empty()).told(Doubt.SPREAD, why));
    if (plusMinus
        && !summary.limits().isEmpty()
        && setting.said().one(Statistic.RANGE, Statistic.QUARTILES).isEmpty()
        && summary.limits().get(0).said().isEmpty()) {
      Limits limits = summary.limits().get(0);
      for (Proposed one : List.of(taken("min", limits.low()), taken("max", limits.high()))) {
        proposals.add(
            one.askedBecause(
                Doubt.SPREAD,
                "Found '"
                    + text
                    + "', and nothing says whether the brackets hold a range or quartiles. Say which."));
      }
    }
  }

  private String asPrinted(Summary summary) {
    String plain = Printed.plain(text);
    return summary.unit().isEmpty()
        ? plain
        : Proposer.plain(summary.centre().orElseThrow()) + " " + summary.spread();
  }

  private List<Proposed> withoutBareOpen(List<Proposed> proposals) {
    return proposals.isEmpty()
        ? List.of(
            question(
                Doubt.NUMBER,
                "Found '" + text + "' where a number is wanted. Write the number, or leave it."))
        : proposals;
  }

  private List<Proposed> dated(Dated dated) {
    if (dated.pairs().isEmpty()) {
      return List.of(
          question(
              Doubt.DATE,
              "Found the date '"
                  + text
                  + "' where a number is wanted. Write what the paper prints."));
    }
    Pair pair = dated.pairs().get(0);
    String why =
        "Found '"
            + text
            + "' where numbers are wanted. A spreadsheet may have made it of "
            + pair.first()
            + "-"
            + pair.second()
            + ". Say what the paper prints.";
    boolean quartiles = setting.said().says(Statistic.QUARTILES);
    Optional<Unit> unit = setting.unit().or(wanted::usualUnit);
    return List.of(
        Proposed.asked(
            wanted.part(quartiles ? "q1" : "min"),
            Integer.toString(pair.first()),
            unit,
            Doubt.DATE,
            why),
        Proposed.asked(
            wanted.part(quartiles ? "q3" : "max"),
            Integer.toString(pair.second()),
            unit,
            Doubt.DATE,
            why));
  }

  private List<Proposed> withUnit(Optional<Unit> printed, List<Proposed> proposals) {
    return Units.with(
        printed,
        proposals,
        wanted,
        setting,
        Objects.requireNonNull(text, "text").toLowerCase(Locale.ROOT));
  }
}
