package gapwise.evidence;

import gapwise.evidence.unit.Duration;
import gapwise.evidence.unit.Money;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.CountedUnit;
import gapwise.evidence.vocabulary.DefinitionKind;
import gapwise.evidence.vocabulary.Missing;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.Phase;
import gapwise.evidence.vocabulary.Standing;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * One number, or group of numbers, that a paper reports for one outcome.
 *
 * @param scope for whom: an arm, all arms together, or one arm against another
 * @param outcome what is reported
 * @param value the numbers as printed
 * @param definition definition as reported
 * @param definitionKinds the same by the vocabulary, as a person confirmed it; empty where nobody
 *     did
 * @param counted what the counts count
 * @param clock where the time starts
 * @param timePoint when it was observed
 * @param followed patients or limbs followed to this point
 * @param subgroup which part of the arm; empty for the whole arm
 * @param phase for an outcome that is a phase of treatment
 * @param money currency and price year of a cost
 * @param test the p value or test statistic printed beside it, in the words of the paper; shown,
 *     and used in no analysis
 * @param tested the same in numbers, of a mean against that of another arm
 * @param standing whether it counts
 * @param provenance place in the paper and words
 * @param missing why template columns are empty, by column
 * @param note anything that the fields cannot say
 */
public record OutcomeReport(
    Scope scope,
    Outcome outcome,
    ReportedValue value,
    Optional<String> definition,
    List<DefinitionKind> definitionKinds,
    Optional<CountedUnit> counted,
    Optional<Clock> clock,
    Optional<Duration> timePoint,
    OptionalInt followed,
    Optional<Subgroup> subgroup,
    Optional<Phase> phase,
    Optional<Money> money,
    Optional<String> test,
    Optional<TestOfMeans> tested,
    Standing standing,
    Provenance provenance,
    SortedMap<String, Missing> missing,
    Optional<String> note) {

  public OutcomeReport {
    Objects.requireNonNull(scope, "scope");
    Objects.requireNonNull(outcome, "outcome");
    Objects.requireNonNull(value, "value");
    Objects.requireNonNull(definition, "definition");
    definitionKinds = List.copyOf(definitionKinds);
    Objects.requireNonNull(counted, "counted");
    Objects.requireNonNull(clock, "clock");
    Objects.requireNonNull(timePoint, "timePoint");
    Objects.requireNonNull(followed, "followed");
    Objects.requireNonNull(subgroup, "subgroup");
    Objects.requireNonNull(phase, "phase");
    Objects.requireNonNull(money, "money");
    Objects.requireNonNull(test, "test");
    Objects.requireNonNull(tested, "tested");
    Objects.requireNonNull(standing, "standing");
    Objects.requireNonNull(provenance, "provenance");
    missing = Collections.unmodifiableSortedMap(new TreeMap<>(missing));
    Objects.requireNonNull(note, "note");
    if (followed.isPresent() && followed.getAsInt() < 0) {
      throw new IllegalArgumentException("followed must not be negative");
    }
  }

  /** Starts a value of which only the given parts are known. */
  public static Builder with(Scope scope, Outcome outcome, ReportedValue value) {
    return new Builder(scope, outcome, value);
  }

  /** Starts from this value, to change some parts. */
  public Builder but() {
    Builder builder = new Builder(scope, outcome, value);
    builder.definition = definition;
    builder.definitionKinds = definitionKinds;
    builder.counted = counted;
    builder.clock = clock;
    builder.timePoint = timePoint;
    builder.followed = followed;
    builder.subgroup = subgroup;
    builder.phase = phase;
    builder.money = money;
    builder.test = test;
    builder.tested = tested;
    builder.standing = standing;
    builder.provenance = provenance;
    builder.missing = missing;
    builder.note = note;
    return builder;
  }

  /** Collects the parts that a paper gives. Not thread-safe. */
  public static final class Builder {
    private final Scope scope;
    private final Outcome outcome;
    private final ReportedValue value;
    private Optional<String> definition = Optional.empty();
    private List<DefinitionKind> definitionKinds = List.of();
    private Optional<CountedUnit> counted = Optional.empty();
    private Optional<Clock> clock = Optional.empty();
    private Optional<Duration> timePoint = Optional.empty();
    private OptionalInt followed = OptionalInt.empty();
    private Optional<Subgroup> subgroup = Optional.empty();
    private Optional<Phase> phase = Optional.empty();
    private Optional<Money> money = Optional.empty();
    private Optional<String> test = Optional.empty();
    private Optional<TestOfMeans> tested = Optional.empty();
    private Standing standing = Standing.COUNTS;
    private Provenance provenance = Provenance.NOWHERE;
    private SortedMap<String, Missing> missing = new TreeMap<>();
    private Optional<String> note = Optional.empty();

    private Builder(Scope scope, Outcome outcome, ReportedValue value) {
      this.scope = scope;
      this.outcome = outcome;
      this.value = value;
    }

    public Builder definition(String value) {
      definition = Optional.of(value);
      return this;
    }

    public Builder definitionKinds(List<DefinitionKind> value) {
      definitionKinds = value;
      return this;
    }

    public Builder counted(CountedUnit value) {
      counted = Optional.of(value);
      return this;
    }

    public Builder clock(Clock value) {
      clock = Optional.of(value);
      return this;
    }

    public Builder timePoint(Duration value) {
      timePoint = Optional.of(value);
      return this;
    }

    public Builder followed(int value) {
      followed = OptionalInt.of(value);
      return this;
    }

    public Builder subgroup(Subgroup value) {
      subgroup = Optional.of(value);
      return this;
    }

    public Builder phase(Phase value) {
      phase = Optional.of(value);
      return this;
    }

    public Builder money(Money value) {
      money = Optional.of(value);
      return this;
    }

    public Builder test(String value) {
      test = Optional.of(value);
      return this;
    }

    public Builder tested(TestOfMeans value) {
      tested = Optional.of(value);
      return this;
    }

    public Builder standing(Standing value) {
      standing = value;
      return this;
    }

    public Builder provenance(Provenance value) {
      provenance = value;
      return this;
    }

    public Builder missing(SortedMap<String, Missing> value) {
      missing = value;
      return this;
    }

    public Builder note(String value) {
      note = Optional.of(value);
      return this;
    }

    /** The value, checked. */
    public OutcomeReport build() {
      return new OutcomeReport(
          scope,
          outcome,
          value,
          definition,
          definitionKinds,
          counted,
          clock,
          timePoint,
          followed,
          subgroup,
          phase,
          money,
          test,
          tested,
          standing,
          provenance,
          missing,
          note);
    }
  }
}
