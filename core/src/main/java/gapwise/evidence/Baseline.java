package gapwise.evidence;

import com.fasterxml.jackson.annotation.JsonIgnore;
import gapwise.evidence.vocabulary.YesOrNo;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * The patients of an arm, or of a whole study where a paper gives one value for all its arms.
 *
 * @param patients patients treated, at least 1
 * @param limbs limbs treated
 * @param defects defects treated
 * @param age years
 * @param male men and boys
 * @param smokers smokers at surgery
 * @param diabetics people with diabetes
 * @param infected infected at the start
 * @param infectedAnswer where a paper only says that all, none or some were infected
 * @param bones bones with their counts
 * @param segments AO/OTA codes of bone segments such as 42
 * @param boneWords the bone in the words of the paper
 * @param defect missing length
 * @param followUp length of follow-up
 * @param lostToFollowUp patients lost
 * @param characteristics further counts and words by the code of the vocabulary of characteristics
 */
public record Baseline(
    OptionalInt patients,
    OptionalInt limbs,
    OptionalInt defects,
    Optional<QuantitySummary> age,
    Optional<EventCount> male,
    Optional<EventCount> smokers,
    Optional<EventCount> diabetics,
    Optional<EventCount> infected,
    Optional<YesOrNo> infectedAnswer,
    List<BoneCount> bones,
    List<String> segments,
    Optional<String> boneWords,
    Optional<DefectLength> defect,
    Optional<QuantitySummary> followUp,
    OptionalInt lostToFollowUp,
    SortedMap<String, Detail> characteristics) {

  public Baseline {
    Objects.requireNonNull(patients, "patients");
    Objects.requireNonNull(limbs, "limbs");
    Objects.requireNonNull(defects, "defects");
    Objects.requireNonNull(age, "age");
    Objects.requireNonNull(male, "male");
    Objects.requireNonNull(smokers, "smokers");
    Objects.requireNonNull(diabetics, "diabetics");
    Objects.requireNonNull(infected, "infected");
    Objects.requireNonNull(infectedAnswer, "infectedAnswer");
    bones = List.copyOf(bones);
    segments = List.copyOf(segments);
    Objects.requireNonNull(boneWords, "boneWords");
    Objects.requireNonNull(defect, "defect");
    Objects.requireNonNull(followUp, "followUp");
    Objects.requireNonNull(lostToFollowUp, "lostToFollowUp");
    characteristics = Collections.unmodifiableSortedMap(new TreeMap<>(characteristics));
    requirePositive("patients", patients);
    requirePositive("limbs", limbs);
    requirePositive("defects", defects);
    if (lostToFollowUp.isPresent() && lostToFollowUp.getAsInt() < 0) {
      throw new IllegalArgumentException("lost to follow-up must not be negative");
    }
  }

  /** Nothing known. */
  public static final Baseline NOTHING = with().build();

  private static void requirePositive(String name, OptionalInt count) {
    if (count.isPresent() && count.getAsInt() < 1) {
      throw new IllegalArgumentException(name + " must be at least 1, was " + count.getAsInt());
    }
  }

  /**
   * How many were infected at the start, both numbers known: as printed; else a number, a
   * percentage (to the nearest patient), "all infected" or "none infected" of the patients treated.
   */
  @JsonIgnore
  public Optional<EventCount> infectedCount() {
    if (infected.filter(EventCount::isComplete).isPresent()) {
      return infected;
    }
    OptionalInt treated = patients.isPresent() ? patients : limbs;
    if (treated.isEmpty()) {
      return Optional.empty();
    }
    int total = treated.getAsInt();
    if (infected.isPresent() && infected.get().events().isPresent()) {
      int events = infected.get().events().getAsInt();
      return events <= total ? Optional.of(EventCount.of(events, total)) : Optional.empty();
    }
    return infectedShareAsPrinted()
        .map(share -> EventCount.of((int) Math.round(share * total), total));
  }

  /**
   * The share infected at the start, 0 to 1, from whatever the paper gives of it: counts, a
   * percentage, or that all or none were.
   */
  @JsonIgnore
  public Optional<Double> infectedShare() {
    return infected
        .flatMap(EventCount::share)
        .or(() -> infectedCount().flatMap(EventCount::share))
        .or(this::infectedShareAsPrinted);
  }

  private Optional<Double> infectedShareAsPrinted() {
    return infected
        .flatMap(EventCount::share)
        .or(
            () ->
                infectedAnswer
                    .filter(answer -> answer == YesOrNo.YES || answer == YesOrNo.NO)
                    .map(answer -> answer == YesOrNo.YES ? 1.0 : 0.0));
  }

  /**
   * Whether the patients were infected at the start: yes when all were, no when none was, mixed
   * when some were; empty when the paper does not say. Counts go before words.
   */
  @JsonIgnore
  public Optional<YesOrNo> infectedAtStart() {
    return infectedShare()
        .map(share -> share == 0 ? YesOrNo.NO : share == 1 ? YesOrNo.YES : YesOrNo.MIXED)
        .or(() -> infectedAnswer);
  }

  /** Starts a value of which only the given parts are known. */
  public static Builder with() {
    return new Builder();
  }

  /** Starts from this value, to change some parts. */
  public Builder but() {
    Builder builder = new Builder();
    builder.patients = patients;
    builder.limbs = limbs;
    builder.defects = defects;
    builder.age = age;
    builder.male = male;
    builder.smokers = smokers;
    builder.diabetics = diabetics;
    builder.infected = infected;
    builder.infectedAnswer = infectedAnswer;
    builder.bones = bones;
    builder.segments = segments;
    builder.boneWords = boneWords;
    builder.defect = defect;
    builder.followUp = followUp;
    builder.lostToFollowUp = lostToFollowUp;
    builder.characteristics = characteristics;
    return builder;
  }

  /** Collects the parts that a paper gives. Not thread-safe. */
  public static final class Builder {
    private OptionalInt patients = OptionalInt.empty();
    private OptionalInt limbs = OptionalInt.empty();
    private OptionalInt defects = OptionalInt.empty();
    private Optional<QuantitySummary> age = Optional.empty();
    private Optional<EventCount> male = Optional.empty();
    private Optional<EventCount> smokers = Optional.empty();
    private Optional<EventCount> diabetics = Optional.empty();
    private Optional<EventCount> infected = Optional.empty();
    private Optional<YesOrNo> infectedAnswer = Optional.empty();
    private List<BoneCount> bones = List.of();
    private List<String> segments = List.of();
    private Optional<String> boneWords = Optional.empty();
    private Optional<DefectLength> defect = Optional.empty();
    private Optional<QuantitySummary> followUp = Optional.empty();
    private OptionalInt lostToFollowUp = OptionalInt.empty();
    private SortedMap<String, Detail> characteristics = new TreeMap<>();

    private Builder() {}

    public Builder patients(int value) {
      patients = OptionalInt.of(value);
      return this;
    }

    public Builder limbs(int value) {
      limbs = OptionalInt.of(value);
      return this;
    }

    public Builder defects(int value) {
      defects = OptionalInt.of(value);
      return this;
    }

    public Builder age(QuantitySummary value) {
      age = Optional.of(value);
      return this;
    }

    public Builder male(EventCount value) {
      male = Optional.of(value);
      return this;
    }

    public Builder smokers(EventCount value) {
      smokers = Optional.of(value);
      return this;
    }

    public Builder diabetics(EventCount value) {
      diabetics = Optional.of(value);
      return this;
    }

    public Builder infected(EventCount value) {
      infected = Optional.of(value);
      return this;
    }

    public Builder infectedAnswer(YesOrNo value) {
      infectedAnswer = Optional.of(value);
      return this;
    }

    public Builder bones(List<BoneCount> value) {
      bones = value;
      return this;
    }

    public Builder segments(List<String> value) {
      segments = value;
      return this;
    }

    public Builder boneWords(String value) {
      boneWords = Optional.of(value);
      return this;
    }

    public Builder defect(DefectLength value) {
      defect = Optional.of(value);
      return this;
    }

    public Builder followUp(QuantitySummary value) {
      followUp = Optional.of(value);
      return this;
    }

    public Builder lostToFollowUp(int value) {
      lostToFollowUp = OptionalInt.of(value);
      return this;
    }

    public Builder characteristics(SortedMap<String, Detail> value) {
      characteristics = value;
      return this;
    }

    /** The value, checked. */
    public Baseline build() {
      return new Baseline(
          patients,
          limbs,
          defects,
          age,
          male,
          smokers,
          diabetics,
          infected,
          infectedAnswer,
          bones,
          segments,
          boneWords,
          defect,
          followUp,
          lostToFollowUp,
          characteristics);
    }
  }
}
