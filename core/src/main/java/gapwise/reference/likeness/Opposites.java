package gapwise.reference.likeness;

import java.util.List;
import java.util.Set;

/** Words a slip apart that mean different things, so that their difference is none of typing. */
final class Opposites {
  /** Beginnings of which one put for the other changes the meaning. */
  private static final List<Set<String>> BEGINNINGS =
      List.of(
          Set.of("hyper", "hypo"),
          Set.of("intra", "inter", "infra", "extra", "supra"),
          Set.of("pre", "pro", "post", "per", "peri"),
          Set.of("ab", "ad"),
          Set.of("mono", "bi", "tri", "uni"),
          Set.of("un", "in", ""),
          Set.of("non", ""),
          Set.of("re", ""),
          Set.of("homo", "hetero", "auto", "allo"));

  /** Endings that make another word of one stem. */
  private static final List<Set<String>> WORDS =
      List.of(
          Set.of("tibia", "fibula"),
          Set.of("tibial", "fibial"),
          Set.of("male", "female"),
          Set.of("with", "without"),
          Set.of("radial", "radical"),
          Set.of("causal", "casual"),
          Set.of("lateral", "literal"));

  private Opposites() {}

  static boolean are(String one, String two) {
    for (Set<String> words : WORDS) {
      if (words.contains(one) && words.contains(two)) {
        return true;
      }
    }
    for (Set<String> beginnings : BEGINNINGS) {
      for (String beginning : beginnings) {
        if (one.startsWith(beginning)) {
          String rest = one.substring(beginning.length());
          for (String other : beginnings) {
            if (!other.equals(beginning) && two.equals(other + rest)) {
              return true;
            }
          }
        }
      }
    }
    return false;
  }
}
