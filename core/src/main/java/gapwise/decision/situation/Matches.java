package gapwise.decision.situation;

import gapwise.evidence.Arm;
import gapwise.evidence.ArmDefect;
import gapwise.evidence.ArmInfection;
import gapwise.evidence.Baseline;
import gapwise.evidence.BoneCount;
import gapwise.evidence.EventCount;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.Study;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.selection.SelectedRow;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * How one group of patients matches a situation, attribute by attribute.
 *
 * @param each what is asked, with the match
 */
public record Matches(Map<Attribute, Match> each) {
  /**
   * A group with its mean or median so near to one length that is asked for is inside: a quarter of
   * it, at least 1 cm (our choice).
   */
  private static final double NEAR = 0.25;

  private static final double LEAST_NEAR_CENTIMETRES = 1;

  public Matches {
    each = Map.copyOf(each);
  }

  /** The match of the group that a row is about. */
  public static Matches of(Situation situation, SelectedRow row) {
    Study study = row.study();
    Arm arm = row.arm();
    Map<Attribute, Match> each = new EnumMap<>(Attribute.class);
    situation
        .defect()
        .ifPresent(
            range -> each.put(Attribute.LENGTH, length(range, row.defect(), row.isOfPart())));
    if (!situation.bones().isEmpty()) {
      each.put(Attribute.BONE, bone(situation.bones(), own(study, arm, Baseline::bones)));
    }
    if (!situation.segments().isEmpty()) {
      List<String> segments = own(study, arm, Baseline::segments);
      each.put(Attribute.SEGMENT, among(situation.segments(), Set.copyOf(segments)));
    }
    situation
        .infected()
        .ifPresent(asked -> each.put(Attribute.INFECTION, infection(asked, study, arm)));
    situation
        .softTissue()
        .ifPresent(
            asked ->
                each.put(
                    Attribute.SOFT_TISSUE,
                    share(asked == SoftTissue.NEEDS_COVER, Covers.share(arm.baseline()))));
    situation
        .age()
        .ifPresent(age -> each.put(Attribute.AGE, age(age >= Situation.ADULT, ages(study, arm))));
    situation
        .smoker()
        .ifPresent(
            asked -> each.put(Attribute.SMOKING, counted(asked, study, arm, Baseline::smokers)));
    situation
        .diabetes()
        .ifPresent(
            asked -> each.put(Attribute.DIABETES, counted(asked, study, arm, Baseline::diabetics)));
    return new Matches(each);
  }

  /**
   * The match of one attribute.
   *
   * @throws java.util.NoSuchElementException where it is not asked
   */
  public Match of(Attribute attribute) {
    return Optional.ofNullable(each.get(attribute)).orElseThrow();
  }

  /** The worst match among some attributes; inside where none of them is asked. */
  public Match worst(Set<Attribute> attributes) {
    return each.entrySet().stream()
        .filter(one -> attributes.contains(one.getKey()))
        .map(Map.Entry::getValue)
        .reduce(Match.INSIDE, Match::orWorse);
  }

  /** What is reported of the group; else of all groups of its study, which then are all like it. */
  private static <T> List<T> own(Study study, Arm arm, Function<Baseline, List<T>> part) {
    List<T> of = part.apply(arm.baseline());
    return of.isEmpty() ? part.apply(study.whole()) : of;
  }

  private static Optional<QuantitySummary> ages(Study study, Arm arm) {
    return arm.baseline().age().or(() -> study.whole().age());
  }

  static Match length(LengthRange asked, Optional<ArmDefect> defect, boolean onlyPatientsInside) {
    if (onlyPatientsInside) {
      return Match.INSIDE;
    }
    if (defect.isEmpty()) {
      return Match.UNKNOWN;
    }
    if (defect.get().centreLiesIn(widened(asked))) {
      return Match.INSIDE;
    }
    if (defect.get().overlaps(asked)) {
      return Match.EDGE;
    }
    return defect.get().leavesOpen(asked) ? Match.UNKNOWN : Match.OUTSIDE;
  }

  /** One length is asked with its neighbourhood; a range stays as it is. */
  private static LengthRange widened(LengthRange asked) {
    if (asked.toCentimetres() > asked.fromCentimetres()) {
      return asked;
    }
    double near = Math.max(LEAST_NEAR_CENTIMETRES, asked.fromCentimetres() * NEAR);
    return new LengthRange(
        Math.max(0, asked.fromCentimetres() - near), asked.toCentimetres() + near);
  }

  private static Match bone(Set<Bone> asked, List<BoneCount> bones) {
    Set<Bone> known =
        bones.stream()
            .filter(one -> one.count().isEmpty() || one.count().getAsInt() > 0)
            .map(BoneCount::bone)
            .collect(Collectors.toSet());
    return known.contains(Bone.LOWER_LIMB) ? Match.UNKNOWN : among(asked, known);
  }

  private static <T> Match among(Set<T> asked, Set<T> known) {
    if (known.isEmpty()) {
      return Match.UNKNOWN;
    }
    if (asked.containsAll(known)) {
      return Match.INSIDE;
    }
    return known.stream().anyMatch(asked::contains) ? Match.EDGE : Match.OUTSIDE;
  }

  private static Match infection(YesOrNo asked, Study study, Arm arm) {
    Optional<YesOrNo> known = ArmInfection.of(study, arm).atStart();
    if (known.isEmpty() || known.get() == YesOrNo.UNCLEAR) {
      return Match.UNKNOWN;
    }
    if (known.get() == asked) {
      return Match.INSIDE;
    }
    return known.get() == YesOrNo.MIXED ? Match.EDGE : Match.OUTSIDE;
  }

  private static Match counted(
      YesOrNo asked, Study study, Arm arm, Function<Baseline, Optional<EventCount>> part) {
    Optional<Double> share = part.apply(arm.baseline()).flatMap(EventCount::share);
    if (share.isEmpty()) {
      // All or none of all groups together holds for each of them.
      share =
          part.apply(study.whole())
              .flatMap(EventCount::share)
              .filter(one -> one == 0 || one == 1 || study.arms().size() == 1);
    }
    return share(
        asked == YesOrNo.YES, share.map(OptionalDouble::of).orElse(OptionalDouble.empty()));
  }

  /** A share of patients who have what is asked, or who are to be without it. */
  private static Match share(boolean asked, OptionalDouble known) {
    if (known.isEmpty()) {
      return Match.UNKNOWN;
    }
    double alike = asked ? known.getAsDouble() : 1 - known.getAsDouble();
    return alike == 1 ? Match.INSIDE : alike > 0 ? Match.EDGE : Match.OUTSIDE;
  }

  private static Match age(boolean adult, Optional<QuantitySummary> age) {
    OptionalDouble centre = age.map(QuantitySummary::centre).orElse(OptionalDouble.empty());
    if (centre.isEmpty()) {
      return Match.UNKNOWN;
    }
    OptionalDouble youngest = age.orElseThrow().minimum();
    boolean grown = centre.getAsDouble() >= Situation.ADULT;
    if (grown != adult) {
      return Match.OUTSIDE;
    }
    boolean mixed = adult && youngest.isPresent() && youngest.getAsDouble() < Situation.ADULT;
    return mixed ? Match.EDGE : Match.INSIDE;
  }

  /** Of how many patients a paper says that the wound needed a flap. */
  private static final class Covers {
    private Covers() {}

    /**
     * The share of open fractures that need cover by their grade: IIIB and IIIC among all graded
     * (Gustilo, Mendoza &amp; Williams, J Trauma 1984;24:742: IIIB is what needs a flap).
     */
    static OptionalDouble share(Baseline baseline) {
      int graded = 0;
      int covered = 0;
      for (String grade : List.of("closed", "i", "ii", "iiia", "iiib", "iiic")) {
        OptionalInt count = count(baseline, "gustilo-" + grade);
        graded += count.orElse(0);
        covered += grade.equals("iiib") || grade.equals("iiic") ? count.orElse(0) : 0;
      }
      return graded == 0 ? OptionalDouble.empty() : OptionalDouble.of((double) covered / graded);
    }

    private static OptionalInt count(Baseline baseline, String code) {
      return Optional.ofNullable(baseline.characteristics().get(code))
          .map(detail -> detail.words())
          .filter(words -> words.matches("\\d{1,6}"))
          .map(words -> OptionalInt.of(Integer.parseInt(words)))
          .orElse(OptionalInt.empty());
    }
  }
}
