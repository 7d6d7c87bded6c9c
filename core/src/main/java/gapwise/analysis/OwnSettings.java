package gapwise.analysis;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.synthesis.multiverse.Choice;
import gapwise.synthesis.multiverse.Settings;

/** Which of all analyses is the one that the plan itself would make. */
final class OwnSettings {
  private OwnSettings() {}

  /** Its settings; they match no analysis if the plan's own choice is not among those varied. */
  static Settings of(MultiverseChoices choices, ObjectNode base) {
    String model = base.path("model").asText();
    Settings own = choices.none();
    for (Choice choice : choices.all()) {
      own = choices.with(own, choice.name(), level(choice, base, model));
    }
    return own;
  }

  private static String level(Choice choice, ObjectNode base, String model) {
    boolean random = model.equals("random-effects");
    boolean byEffects =
        random
            || (model.equals("common-effect")
                && base.path("pooling").asText().equals("inverse-variance"));
    return switch (choice.name()) {
      case MultiverseChoices.MODEL -> model;
      case MultiverseChoices.SCALE -> byEffects ? base.path("scale").asText() : "";
      case MultiverseChoices.EMPTY_CELLS ->
          byEffects && base.has("continuityCorrection") ? MultiverseChoices.words(base) : "";
      case MultiverseChoices.ESTIMATOR, MultiverseChoices.INTERVAL ->
          random ? base.path(choice.name()).asText() : "";
      default -> choice.levels().get(0);
    };
  }
}
