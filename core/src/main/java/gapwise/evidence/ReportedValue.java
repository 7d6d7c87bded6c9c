package gapwise.evidence;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import gapwise.evidence.unit.Unit;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.regex.Pattern;

/** The numbers of an outcome in the form in which a paper prints them. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "form")
@JsonSubTypes({
  @JsonSubTypes.Type(value = ReportedValue.Events.class, name = "events"),
  @JsonSubTypes.Type(value = ReportedValue.Quantity.class, name = "quantity"),
  @JsonSubTypes.Type(value = ReportedValue.Rate.class, name = "rate"),
  @JsonSubTypes.Type(value = ReportedValue.Tally.class, name = "tally"),
  @JsonSubTypes.Type(value = ReportedValue.Effect.class, name = "effect"),
  @JsonSubTypes.Type(value = ReportedValue.Categories.class, name = "categories"),
  @JsonSubTypes.Type(value = ReportedValue.Statement.class, name = "statement")
})
public sealed interface ReportedValue {

  /** So many of so many. */
  record Events(EventCount count) implements ReportedValue {
    public Events {
      Objects.requireNonNull(count, "count");
    }
  }

  /** A quantity summed up over patients. */
  record Quantity(QuantitySummary summary) implements ReportedValue {
    public Quantity {
      Objects.requireNonNull(summary, "summary");
      if (summary.isEmpty()) {
        throw new IllegalArgumentException("a quantity needs at least one number");
      }
    }
  }

  /**
   * Events over time at risk; one patient may have several.
   *
   * @param events 0 or more
   * @param personTime more than 0
   * @param unit of the time
   */
  record Rate(int events, double personTime, Unit unit) implements ReportedValue {
    public Rate {
      if (events < 0) {
        throw new IllegalArgumentException("events must not be negative, was " + events);
      }
      if (!(personTime > 0) || !Double.isFinite(personTime)) {
        throw new IllegalArgumentException("person-time must be more than 0, was " + personTime);
      }
      if (unit.dimension() != Unit.Dimension.TIME) {
        throw new IllegalArgumentException(unit.symbol() + " is not a unit of time");
      }
    }
  }

  /**
   * So many events among so many patients, of whom one may have several, as in "406 complications
   * in 282 patients". A rate, never a share of patients.
   *
   * @param events 0 or more
   * @param among patients or limbs in whom they were counted, at least 1; empty where not said
   */
  record Tally(int events, OptionalInt among) implements ReportedValue {
    public Tally {
      if (events < 0) {
        throw new IllegalArgumentException("events must not be negative, was " + events);
      }
      if (among.isPresent() && among.getAsInt() < 1) {
        throw new IllegalArgumentException("total must be at least 1, was " + among.getAsInt());
      }
    }
  }

  /**
   * An effect that a paper reports without the numbers of its arms.
   *
   * @param kind such as odds ratio or mean difference, as reported
   * @param estimate finite
   * @param lower lower 95 % limit
   * @param upper upper 95 % limit
   * @param pValue 0 to 1
   * @param adjustedFor what it was adjusted for; empty for a crude effect
   */
  record Effect(
      String kind,
      double estimate,
      OptionalDouble lower,
      OptionalDouble upper,
      OptionalDouble pValue,
      Optional<String> adjustedFor)
      implements ReportedValue {
    public Effect {
      Objects.requireNonNull(adjustedFor, "adjustedFor");
      if (kind.isBlank() || !Double.isFinite(estimate)) {
        throw new IllegalArgumentException("an effect needs a kind and a finite estimate");
      }
      if (lower.isPresent() && upper.isPresent() && lower.getAsDouble() > upper.getAsDouble()) {
        throw new IllegalArgumentException("the lower limit is larger than the upper");
      }
      if (pValue.isPresent() && !(pValue.getAsDouble() >= 0 && pValue.getAsDouble() <= 1)) {
        throw new IllegalArgumentException("a p value is 0 to 1, was " + pValue.getAsDouble());
      }
    }
  }

  /** Counts in ordered categories such as excellent, good, fair, poor. */
  record Categories(List<Category> counts) implements ReportedValue {
    private static final Pattern GOOD =
        Pattern.compile("^(excellent|good)\\b", Pattern.CASE_INSENSITIVE);

    public Categories {
      counts = List.copyOf(counts);
      if (counts.isEmpty()) {
        throw new IllegalArgumentException("categories need at least one count");
      }
    }

    /** The count of those called excellent or good, the usual cut (common practice, no source). */
    public int good() {
      return counts.stream()
          .filter(category -> GOOD.matcher(category.name()).find())
          .mapToInt(Category::count)
          .sum();
    }

    /** The sum of all counts. */
    public int sum() {
      return counts.stream().mapToInt(Category::count).sum();
    }
  }

  /**
   * One category.
   *
   * @param name as reported
   * @param count 0 or more
   */
  record Category(String name, int count) {
    public Category {
      if (name.isBlank() || count < 0) {
        throw new IllegalArgumentException("a category needs a name and a count of 0 or more");
      }
    }
  }

  /**
   * What a paper says without numbers, such as "no difference".
   *
   * @param words as reported
   * @param total how many it is about, where it says so
   */
  record Statement(String words, OptionalInt total) implements ReportedValue {
    public Statement {
      Objects.requireNonNull(total, "total");
      if (words.isBlank()) {
        throw new IllegalArgumentException("a statement needs words");
      }
    }
  }
}
