package gapwise.decision.situation;

import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.search.SearchRequest;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * The situation that options are compared for. Nothing in it says who the patient is.
 *
 * @param among the groups of patients that the numbers are taken from, methods included; whatever
 *     narrows them for everybody, such as the least follow-up
 * @param defect missing bone
 * @param bones the bone; several are alternatives
 * @param segments AO/OTA codes of the part of the bone
 * @param infected whether the bone is infected
 * @param softTissue skin and muscle over the gap
 * @param age years, 0 to 110
 * @param smoker whether the patient smokes
 * @param diabetes whether the patient has diabetes
 * @param wishes what matters most to the patient, first things first, each once
 */
public record Situation(
    SearchRequest among,
    Optional<LengthRange> defect,
    Set<Bone> bones,
    Set<String> segments,
    Optional<YesOrNo> infected,
    Optional<SoftTissue> softTissue,
    OptionalInt age,
    Optional<YesOrNo> smoker,
    Optional<YesOrNo> diabetes,
    List<Wish> wishes) {
  /** From this age on a patient counts as grown up (common practice, no source). */
  static final int ADULT = 16;

  private static final int OLDEST = 110;

  public Situation {
    Objects.requireNonNull(among, "among");
    Objects.requireNonNull(defect, "defect");
    bones = Set.copyOf(bones);
    segments = Set.copyOf(segments);
    Objects.requireNonNull(infected, "infected");
    Objects.requireNonNull(softTissue, "softTissue");
    Objects.requireNonNull(age, "age");
    Objects.requireNonNull(smoker, "smoker");
    Objects.requireNonNull(diabetes, "diabetes");
    wishes = List.copyOf(wishes);
    if (age.isPresent() && (age.getAsInt() < 0 || age.getAsInt() > OLDEST)) {
      throw new IllegalArgumentException("age must be 0 to 110 years, was " + age.getAsInt());
    }
    if (Set.copyOf(wishes).size() != wishes.size()) {
      throw new IllegalArgumentException("each wish once, were " + wishes);
    }
  }

  /** What is asked of the patient, so that groups can be held against it. */
  public Set<Attribute> asked() {
    Set<Attribute> asked = EnumSet.noneOf(Attribute.class);
    add(asked, Attribute.LENGTH, defect.isPresent());
    add(asked, Attribute.BONE, !bones.isEmpty());
    add(asked, Attribute.SEGMENT, !segments.isEmpty());
    add(asked, Attribute.INFECTION, infected.isPresent());
    add(asked, Attribute.SOFT_TISSUE, softTissue.isPresent());
    add(asked, Attribute.AGE, age.isPresent());
    add(asked, Attribute.SMOKING, smoker.isPresent());
    add(asked, Attribute.DIABETES, diabetes.isPresent());
    return asked;
  }

  private static void add(Set<Attribute> asked, Attribute attribute, boolean isAsked) {
    if (isAsked) {
      asked.add(attribute);
    }
  }

  /** Those by which a group counts as inside, at the edge, outside or unknown. */
  public Set<Attribute> mattering() {
    Set<Attribute> mattering = asked();
    mattering.retainAll(Attribute.MATTERING);
    return mattering;
  }

  /** The same of an amputation, of which no paper gives a missing length. */
  public Set<Attribute> matteringOfAmputation() {
    Set<Attribute> mattering = mattering();
    mattering.remove(Attribute.LENGTH);
    return mattering;
  }
}
