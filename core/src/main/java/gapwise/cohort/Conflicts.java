package gapwise.cohort;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.vocabulary.Bone;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Numbers of two groups that no patient can satisfy both of. */
final class Conflicts {
  private Conflicts() {}

  /** Whether nobody can be in both groups. */
  static boolean exclude(StudyFacts one, GroupFacts a, StudyFacts two, GroupFacts b) {
    Set<Bone> bonesA = bones(one, a);
    Set<Bone> bonesB = bones(two, b);
    return !bonesA.isEmpty() && !bonesB.isEmpty() && Collections.disjoint(bonesA, bonesB)
        || infectionDiffers(a, b)
        || a.lengths().apartFrom(b.lengths())
        || a.ages().apartFrom(b.ages())
        || agesByTitle(one, two)
        || agesByTitle(two, one);
  }

  /** Whether few can be in both groups, by their ages or lengths. */
  static boolean discourage(GroupFacts a, GroupFacts b) {
    return a.lengths().hardlyMeets(b.lengths()) || a.ages().hardlyMeets(b.ages());
  }

  private static boolean infectionDiffers(GroupFacts a, GroupFacts b) {
    return a.infected().isPresent()
        && b.infected().isPresent()
        && Math.abs(a.infected().get() - b.infected().get()) == 1;
  }

  /** What speaks against patients of one group in the other. */
  static List<Sign> between(StudyFacts one, GroupFacts a, StudyFacts two, GroupFacts b) {
    List<Sign> signs = new ArrayList<>();
    Set<Bone> bonesA = bones(one, a);
    Set<Bone> bonesB = bones(two, b);
    if (!bonesA.isEmpty() && !bonesB.isEmpty() && Collections.disjoint(bonesA, bonesB)) {
      signs.add(
          Sign.against(
              Fact.BONES,
              say("cohort.bones-differ", Map.of("first", named(bonesA), "second", named(bonesB)))));
    }
    if (infectionDiffers(a, b)) {
      signs.add(Sign.against(Fact.INFECTION, say("cohort.infection-differs")));
    }
    if (a.lengths().hardlyMeets(b.lengths())) {
      signs.add(
          Sign.against(
              Fact.LENGTHS,
              say(
                  "cohort.lengths-apart",
                  Map.of("first", a.lengths().toString(), "second", b.lengths().toString()))));
    }
    if (a.ages().hardlyMeets(b.ages())) {
      signs.add(
          Sign.against(
              Fact.AGES,
              say(
                  "cohort.ages-apart",
                  Map.of("first", a.ages().toString(), "second", b.ages().toString()))));
    } else if (agesByTitle(one, two) || agesByTitle(two, one)) {
      signs.add(Sign.against(Fact.AGES, say("cohort.ages-by-title")));
    }
    return signs;
  }

  private static boolean agesByTitle(StudyFacts one, StudyFacts two) {
    return TitleSays.youngOnly(one.print()) && TitleSays.grownOnly(two.print());
  }

  /** Bones by the rows; where those say nothing, by the title. */
  private static Set<Bone> bones(StudyFacts study, GroupFacts group) {
    if (!group.bones().isEmpty()) {
      return group.bones();
    }
    Set<Bone> byTitle = TitleSays.bones(study.print());
    return byTitle.isEmpty() ? EnumSet.noneOf(Bone.class) : byTitle;
  }

  private static String named(Set<Bone> bones) {
    return new TreeSet<>(bones).stream().map(Bone::label).collect(Collectors.joining(", "));
  }
}
