package gapwise.printed;

import gapwise.evidence.unit.Unit;
import gapwise.printed.Phrase.Part;
import gapwise.printed.Phrase.Shape;
import gapwise.printed.PrintedValue.Amount;
import gapwise.printed.PrintedValue.Deviation;
import gapwise.printed.PrintedValue.Limits;
import gapwise.printed.PrintedValue.Several;
import gapwise.printed.PrintedValue.Share;
import gapwise.printed.PrintedValue.Summary;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What the parts of a phrase mean together. Parts that do not go together mean nothing. */
record PhraseMeaning(
    String text,
    List<Part> parts,
    List<Unit> units,
    List<Statistic> loose,
    Optional<Statistic> open,
    boolean negative) {

  Optional<PrintedValue> read() {
    Optional<Statistic> said = open.isPresent() ? open : loose.stream().findFirst();
    if (parts.isEmpty() || new HashSet<>(units).size() > 1 || loose.size() > 2) {
      return Optional.empty();
    }
    if (has(Shape.RATIO) || has(Shape.PERCENT)) {
      return share();
    }
    if (count(Shape.VALUE) > 1 || count(Shape.DEVIATION) > 1) {
      return Optional.empty();
    }
    Optional<Part> value = first(Shape.VALUE);
    if (value.isPresent() && parts.size() == 1) {
      return Optional.of(amount(value.get(), said));
    }
    if (value.isPresent() && value.get() != parts.get(0)) {
      return Optional.empty();
    }
    return Optional.of(summary(value, said));
  }

  private Optional<Unit> unit() {
    return units.stream().findFirst();
  }

  private boolean has(Shape shape) {
    return count(shape) > 0;
  }

  private long count(Shape shape) {
    return parts.stream().filter(part -> part.shape() == shape).count();
  }

  private Optional<Part> first(Shape shape) {
    return parts.stream().filter(part -> part.shape() == shape).findFirst();
  }

  private PrintedValue amount(Part part, Optional<Statistic> after) {
    Optional<Statistic> said = part.said().isPresent() ? part.said() : after;
    if (said.filter(Statistic.P_VALUE::equals).isPresent()) {
      return new PrintedValue.Test(part.a(), part.bound());
    }
    boolean whole = Tokens.decimals(part.first().text()) == 0;
    double sign = negative ? -1 : 1;
    Amount read = new Amount(sign * part.a(), unit(), part.bound(), whole, said);
    if (!Tokens.ambiguous(part.first().text())) {
      return read;
    }
    double thousands = sign * Double.parseDouble(part.first().text().replace(",", ""));
    return new Several(
        List.of(read, new Amount(thousands, unit(), part.bound(), true, said)),
        "The comma can separate thousands or decimals.");
  }

  private Optional<PrintedValue> share() {
    if (count(Shape.RATIO) > 1
        || count(Shape.PERCENT) > 1
        || has(Shape.LIMITS)
        || count(Shape.VALUE) > 1) {
      return Optional.empty();
    }
    Optional<Part> ratio = first(Shape.RATIO);
    Optional<Part> percent = first(Shape.PERCENT);
    // "20 (87%)" has its count before the brackets, "87% (20)" in them.
    Optional<Part> single = first(Shape.VALUE).or(() -> first(Shape.DEVIATION));
    if (ratio.isPresent() && single.isPresent() || has(Shape.VALUE) && has(Shape.DEVIATION)) {
      return Optional.empty();
    }
    boolean whole =
        parts.stream()
            .filter(part -> part.shape() != Shape.PERCENT)
            .allMatch(
                part ->
                    Tokens.decimals(part.first().text() + "") == 0
                        && Tokens.decimals(part.second().text()) == 0);
    boolean exact = parts.stream().allMatch(part -> part.bound() == PrintedValue.Bound.EXACT);
    if (!whole || !exact || negative || !units.isEmpty()) {
      return Optional.empty();
    }
    OptionalDouble count =
        ratio
            .or(() -> single)
            .map(part -> OptionalDouble.of(part.a()))
            .orElse(OptionalDouble.empty());
    return Optional.of(
        new Share(
            count,
            ratio.map(part -> OptionalDouble.of(part.b())).orElse(OptionalDouble.empty()),
            percent.map(part -> OptionalDouble.of(part.a())).orElse(OptionalDouble.empty()),
            percent.map(part -> Tokens.decimals(part.first().text())).orElse(0)));
  }

  private PrintedValue summary(Optional<Part> value, Optional<Statistic> after) {
    List<Limits> limits = new ArrayList<>();
    Optional<Deviation> deviation = Optional.empty();
    for (Part part : parts) {
      Optional<Statistic> said = part.said().isPresent() ? part.said() : spreadOf(after);
      if (part.shape() == Shape.LIMITS) {
        limits.add(new Limits(part.a(), part.b(), said.filter(Summaries::isLimits)));
      } else if (part.shape() == Shape.DEVIATION) {
        deviation =
            Optional.of(
                new Deviation(
                    part.a(),
                    said.filter(Summaries::isDeviation),
                    !part.bracketed() || text.contains("(±") || text.contains("( ±")));
      }
    }
    OptionalDouble centre =
        value.map(part -> OptionalDouble.of(part.a())).orElse(OptionalDouble.empty());
    if (negative && centre.isPresent()) {
      centre = OptionalDouble.of(-centre.getAsDouble());
    }
    Optional<Statistic> said =
        value.flatMap(Part::said).or(() -> after).filter(Summaries::isCentre);
    return new Summary(centre, said, deviation, limits, unit(), spread(value));
  }

  private static Optional<Statistic> spreadOf(Optional<Statistic> after) {
    return after.filter(one -> !Summaries.isCentre(one));
  }

  /** The spread as the template takes it: what stands after the first number, without the unit. */
  private String spread(Optional<Part> value) {
    StringBuilder out = new StringBuilder();
    for (Part part : parts) {
      if (value.filter(part::equals).isPresent() || out.length() > 0) {
        continue;
      }
      if (part.shape() == Shape.DEVIATION && !part.bracketed()) {
        out.append("± ").append(part.first().text());
      } else if (part.shape() == Shape.DEVIATION) {
        out.append("(").append(part.first().text()).append(")");
      } else {
        out.append("(")
            .append(part.first().text())
            .append("-")
            .append(part.second().text())
            .append(")");
      }
    }
    return out.toString();
  }

  /** Which words say what of a summary. */
  static final class Summaries {
    private Summaries() {}

    static boolean isCentre(Statistic one) {
      return one == Statistic.MEAN || one == Statistic.MEDIAN;
    }

    static boolean isDeviation(Statistic one) {
      return one == Statistic.SD || one == Statistic.SE || one == Statistic.QUARTILES;
    }

    static boolean isLimits(Statistic one) {
      return one == Statistic.RANGE || one == Statistic.QUARTILES || one == Statistic.CONFIDENCE;
    }
  }
}
