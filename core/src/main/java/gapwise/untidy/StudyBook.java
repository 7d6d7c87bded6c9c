package gapwise.untidy;

import java.text.Normalizer;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** The names that a reading gives to studies and groups, the same through all tables of a file. */
final class StudyBook {
  private final Map<String, Map<String, String>> arms = new LinkedHashMap<>();

  /** The id of a study from its author and year, or from any words. */
  static String id(String words) {
    String plain = Normalizer.normalize(words, Normalizer.Form.NFKD).replaceAll("\\p{M}", "");
    String id =
        plain.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-+|-+$", "");
    return id.isEmpty() ? "study" : id.substring(0, Math.min(id.length(), 40));
  }

  /** The letter of the group of a study that is known by these words. */
  String arm(String study, String key) {
    Map<String, String> known = arms.computeIfAbsent(study, any -> new LinkedHashMap<>());
    return known.computeIfAbsent(key, any -> letter(known.size()));
  }

  /** The one group of a study that is known so far; empty where there are none or several. */
  Optional<String> onlyArm(String study) {
    Map<String, String> known = arms.getOrDefault(study, Map.of());
    return known.size() == 1 ? known.values().stream().findFirst() : Optional.empty();
  }

  /** A letter for a group that nothing tells from others. */
  String furtherArm(String study) {
    Map<String, String> known = arms.computeIfAbsent(study, any -> new LinkedHashMap<>());
    return arm(study, "group " + known.size());
  }

  private static String letter(int index) {
    return index < 26 ? String.valueOf((char) ('A' + index)) : "G" + (index + 1);
  }
}
