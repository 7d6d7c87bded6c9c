package gapwise.cohort;

import gapwise.evidence.vocabulary.Bone;
import gapwise.reference.likeness.TitleWords;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** Whom a title restricts a paper to, in plain words of the trade. Common practice, no source. */
final class TitleSays {
  private static final Set<String> SHIN = Set.of("tibia", "tibial", "tibias", "tibiae", "shin");
  private static final Set<String> THIGH = Set.of("femur", "femoral", "femurs", "thigh", "femora");
  private static final Set<String> YOUNG =
      Set.of("children", "child", "pediatric", "adolescent", "adolescents", "childhood", "infants");
  private static final Set<String> GROWN =
      Set.of("adult", "adults", "elderly", "older", "geriatric", "veterans");
  private static final Set<String> REGISTER =
      Set.of("register", "registry", "national", "nationwide", "registries", "registers");

  private TitleSays() {}

  /** The bones it names; empty where it names none. */
  static Set<Bone> bones(StudyFacts.Print print) {
    Set<Bone> bones = EnumSet.noneOf(Bone.class);
    if (names(print, SHIN)) {
      bones.add(Bone.TIBIA);
    }
    if (names(print, THIGH)) {
      bones.add(Bone.FEMUR);
    }
    return bones;
  }

  static boolean youngOnly(StudyFacts.Print print) {
    return names(print, YOUNG) && !names(print, GROWN);
  }

  static boolean grownOnly(StudyFacts.Print print) {
    return names(print, GROWN) && !names(print, YOUNG);
  }

  /** Whether it says that a register or a whole country is reported. */
  static boolean register(StudyFacts.Print print) {
    return names(print, REGISTER);
  }

  private static boolean names(StudyFacts.Print print, Set<String> words) {
    List<TitleWords> titles = print.titles();
    return titles.get(0).words().stream().anyMatch(words::contains);
  }
}
