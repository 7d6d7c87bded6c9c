package gapwise.cohort;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.vocabulary.Bone;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;

/** Whether one group of a study is a part of another group of it, so that it is counted twice. */
final class PartBeside {
  /** So many counts must fit before the fit of all says anything. */
  private static final int COUNTS = 3;

  /** Words by which a label restricts a group to some. Common practice, no source. */
  private static final Set<String> RESTRICTING =
      Set.of(
          "only",
          "subset",
          "subgroup",
          "subsample",
          "thereof",
          "infected",
          "septic",
          "aseptic",
          "uninfected",
          "tibia",
          "tibial",
          "tibias",
          "femur",
          "femoral",
          "femurs",
          "shin",
          "thigh",
          "children",
          "adults",
          "men",
          "women",
          "male",
          "female",
          "smokers",
          "over",
          "under",
          "above",
          "below",
          "long",
          "large",
          "open",
          "followed");

  private PartBeside() {}

  /** The part first, then the whole. */
  record Pair(GroupFacts part, GroupFacts whole, Found found) {}

  static List<Pair> in(StudyFacts study) {
    List<Pair> pairs = new ArrayList<>();
    for (GroupFacts part : study.groups()) {
      for (GroupFacts whole : study.groups()) {
        if (part != whole) {
          judge(study, part, whole).ifPresent(found -> pairs.add(new Pair(part, whole, found)));
        }
      }
    }
    return pairs;
  }

  private static Optional<Found> judge(StudyFacts study, GroupFacts part, GroupFacts whole) {
    boolean comparable =
        part.method().equals(whole.method())
            && part.parts().equals(whole.parts())
            && !part.keptApart()
            && !whole.keptApart();
    if (!comparable) {
      return Optional.empty();
    }
    SharedRows rows = SharedRows.of(part.prints(), whole.prints());
    boolean fits =
        part.numbers().fitInto(whole.numbers())
            && part.numbers().commonCounts(whole.numbers()) >= COUNTS
            && smaller(part, whole);
    if (!fits && !(rows.areBeyondChance(true) && smaller(part, whole))) {
      return Optional.empty();
    }
    boolean label = labelRestricts(part, whole);
    boolean size = isOneOfItsCounts(part, whole);
    boolean sum = groupsExceedWhole(study, part);
    List<Sign> signs = new ArrayList<>();
    if (label) {
      signs.add(
          Sign.agrees(
              Fact.LABEL,
              say("cohort.label-restricts", Map.of("part", part.label(), "whole", whole.label()))));
    }
    if (size) {
      signs.add(Sign.agrees(Fact.BONES, say("cohort.size-is-count")));
    }
    if (sum) {
      signs.add(Sign.agrees(Fact.NUMBERS, say("cohort.groups-exceed-whole")));
    } else if (fits) {
      signs.add(Sign.agrees(Fact.NUMBERS, say("cohort.group-counts-fit")));
    }
    if (rows.areBeyondChance(true)) {
      signs.add(
          Sign.agrees(
              Fact.PATIENT_ROWS,
              say(
                  "cohort.rows-alike",
                  Map.of(
                      "alike", rows.alike(), "first", rows.ofFirst(), "second", rows.ofSecond()))));
      return Optional.of(new Found(Verdict.PART, Strength.STRONG, signs));
    }
    if (label || sum) {
      return Optional.of(
          new Found(Verdict.PART, label && size ? Strength.STRONG : Strength.MODERATE, signs));
    }
    return size ? Optional.of(new Found(Verdict.POSSIBLE, Strength.WEAK, signs)) : Optional.empty();
  }

  private static boolean smaller(GroupFacts part, GroupFacts whole) {
    return part.patients().isPresent()
        && whole.patients().isPresent()
        && part.patients().getAsInt() < whole.patients().getAsInt();
  }

  /** Whether the label is that of the other, and more words that restrict it. */
  private static boolean labelRestricts(GroupFacts part, GroupFacts whole) {
    Set<String> more = new TreeSet<>(CentreName.words(part.label()));
    Set<String> own = new TreeSet<>(CentreName.words(whole.label()));
    boolean longer = !own.isEmpty() && more.containsAll(own);
    more.removeAll(own);
    return longer && more.stream().anyMatch(RESTRICTING::contains);
  }

  /** As many as the other group has of one bone, or infected, and all of them such. */
  private static boolean isOneOfItsCounts(GroupFacts part, GroupFacts whole) {
    OptionalInt size = part.patients();
    if (size.isEmpty()) {
      return false;
    }
    if (part.bones().size() == 1 && whole.bones().size() > 1) {
      Bone only = part.bones().iterator().next();
      Integer there = whole.numbers().counts().get(only.code());
      if (there != null && there == size.getAsInt()) {
        return true;
      }
    }
    Integer infected = whole.numbers().counts().get("infected");
    return part.infected().equals(Optional.of(1.0))
        && infected != null
        && infected == size.getAsInt();
  }

  private static boolean groupsExceedWhole(StudyFacts study, GroupFacts part) {
    OptionalInt all = study.stated().allPatients();
    boolean counted = study.groups().stream().allMatch(group -> group.patients().isPresent());
    return all.isPresent()
        && counted
        && study.patients() - part.patients().orElse(0) == all.getAsInt();
  }
}
