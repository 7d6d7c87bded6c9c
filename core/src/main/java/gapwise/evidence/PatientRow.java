package gapwise.evidence;

import gapwise.evidence.unit.Duration;
import gapwise.evidence.unit.Length;
import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Missing;
import gapwise.evidence.vocabulary.Sex;
import gapwise.evidence.vocabulary.YesOrNo;
import java.util.Collections;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * One patient of an arm as a paper describes them; never with anything that identifies a person.
 *
 * @param id unique within the study, such as case 1
 * @param armId the arm
 * @param ageYears 0 to 110
 * @param sex as reported
 * @param bone bone with the defect
 * @param segment AO/OTA code
 * @param infected infected at the start
 * @param followUp follow-up
 * @param defect missing length
 * @param outcomes what happened, by outcome code
 * @param provenance place in the paper and words
 * @param missing why template columns are empty, by column
 * @param note anything that the fields cannot say
 */
public record PatientRow(
    String id,
    String armId,
    OptionalDouble ageYears,
    Optional<Sex> sex,
    Optional<Bone> bone,
    Optional<String> segment,
    Optional<YesOrNo> infected,
    Optional<Duration> followUp,
    Optional<Length> defect,
    SortedMap<String, PatientOutcome> outcomes,
    Provenance provenance,
    SortedMap<String, Missing> missing,
    Optional<String> note) {

  public PatientRow {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(armId, "armId");
    Objects.requireNonNull(ageYears, "ageYears");
    Objects.requireNonNull(sex, "sex");
    Objects.requireNonNull(bone, "bone");
    Objects.requireNonNull(segment, "segment");
    Objects.requireNonNull(infected, "infected");
    Objects.requireNonNull(followUp, "followUp");
    Objects.requireNonNull(defect, "defect");
    outcomes = Collections.unmodifiableSortedMap(new TreeMap<>(outcomes));
    Objects.requireNonNull(provenance, "provenance");
    missing = Collections.unmodifiableSortedMap(new TreeMap<>(missing));
    Objects.requireNonNull(note, "note");
    Ids.require("patient id", id);
    if (ageYears.isPresent() && !(ageYears.getAsDouble() >= 0 && ageYears.getAsDouble() <= 110)) {
      throw new IllegalArgumentException(
          "age must be 0 to 110 years, was " + ageYears.getAsDouble());
    }
  }

  /** Starts a value of which only the given parts are known. */
  public static Builder with(String id, String armId) {
    return new Builder(id, armId);
  }

  /** Collects the parts that a paper gives. Not thread-safe. */
  public static final class Builder {
    private final String id;
    private final String armId;
    private OptionalDouble ageYears = OptionalDouble.empty();
    private Optional<Sex> sex = Optional.empty();
    private Optional<Bone> bone = Optional.empty();
    private Optional<String> segment = Optional.empty();
    private Optional<YesOrNo> infected = Optional.empty();
    private Optional<Duration> followUp = Optional.empty();
    private Optional<Length> defect = Optional.empty();
    private SortedMap<String, PatientOutcome> outcomes = new TreeMap<>();
    private Provenance provenance = Provenance.NOWHERE;
    private SortedMap<String, Missing> missing = new TreeMap<>();
    private Optional<String> note = Optional.empty();

    private Builder(String id, String armId) {
      this.id = id;
      this.armId = armId;
    }

    public Builder ageYears(double value) {
      ageYears = OptionalDouble.of(value);
      return this;
    }

    public Builder sex(Sex value) {
      sex = Optional.of(value);
      return this;
    }

    public Builder bone(Bone value) {
      bone = Optional.of(value);
      return this;
    }

    public Builder segment(String value) {
      segment = Optional.of(value);
      return this;
    }

    public Builder infected(YesOrNo value) {
      infected = Optional.of(value);
      return this;
    }

    public Builder followUp(Duration value) {
      followUp = Optional.of(value);
      return this;
    }

    public Builder defect(Length value) {
      defect = Optional.of(value);
      return this;
    }

    public Builder outcomes(SortedMap<String, PatientOutcome> value) {
      outcomes = value;
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
    public PatientRow build() {
      return new PatientRow(
          id,
          armId,
          ageYears,
          sex,
          bone,
          segment,
          infected,
          followUp,
          defect,
          outcomes,
          provenance,
          missing,
          note);
    }
  }
}
