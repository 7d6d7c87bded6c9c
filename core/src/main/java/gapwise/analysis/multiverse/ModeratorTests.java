package gapwise.analysis.multiverse;

import gapwise.analysis.pooling.ExactModels;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** How moderators are tested by the models that a multiverse of a regression has. */
final class ModeratorTests {
  /** The usual one first. A common effect has no choice. */
  private static final Map<String, List<String>> OF_MODELS =
      Map.of(
          "random-effects", List.of("hartung-knapp", "normal"),
          "common-effect", List.of(),
          "exact-likelihood", List.of(ExactModels.MODERATORS_BY_STUDENT_T, "normal"));

  /** All of them, in the order in which they are told. */
  private static final List<String> ALL =
      List.of("hartung-knapp", ExactModels.MODERATORS_BY_STUDENT_T, "normal");

  private ModeratorTests() {}

  /** Whether a model can be fitted to moderators and told beside others. */
  static boolean hasModel(String model) {
    return OF_MODELS.containsKey(model);
  }

  /** The models. */
  static List<String> models() {
    return List.of("random-effects", "common-effect", "exact-likelihood");
  }

  /** Whether a model has a choice of tests, and this is one of them. */
  static boolean has(String model, String test) {
    return OF_MODELS.getOrDefault(model, List.of()).contains(test);
  }

  /** The tests of a model, the usual one first. */
  static List<String> of(String model) {
    return OF_MODELS.getOrDefault(model, List.of());
  }

  /** Every test of some models. */
  static List<String> allOf(List<String> models) {
    return ALL.stream()
        .filter(test -> models.stream().anyMatch(model -> has(model, test)))
        .toList();
  }

  /**
   * One test for each of some models: the plan's own where a model has it, else its usual one.
   *
   * @param own model of the plan
   * @param test of the plan
   */
  static List<String> oneOf(List<String> models, String own, String test) {
    Set<String> words = new HashSet<>();
    if (models.contains(own) && has(own, test)) {
      words.add(test);
    }
    for (String model : models) {
      if (of(model).stream().noneMatch(words::contains)) {
        of(model).stream().findFirst().ifPresent(words::add);
      }
    }
    return ALL.stream().filter(words::contains).toList();
  }
}
