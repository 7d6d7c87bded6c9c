package gapwise.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.plan.Task;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A plan's model as people read it at the foot of a figure. */
class ModelWordsTest {
  private static final JsonMapper JSON = new JsonMapper();

  /** A setting of a plan and one of the words that the schema allows for it. */
  private record Setting(String name, String word) {}

  static Stream<Setting> everyWordOfTheSchema() throws IOException {
    List<Setting> settings = new ArrayList<>();
    try (InputStream in = Task.class.getResourceAsStream("/gapwise/analysis/plan.schema.json")) {
      JsonNode properties = JSON.readTree(in).at("/$defs/synthesis/properties");
      for (String name : List.of("measure", "scale", "betweenStudyVariance", "interval")) {
        properties.path(name).path("enum").forEach(word -> settings.add(setting(name, word)));
      }
    }
    return settings.stream();
  }

  private static Setting setting(String name, JsonNode word) {
    return new Setting(name, word.asText());
  }

  @ParameterizedTest
  @MethodSource("everyWordOfTheSchema")
  void everyWordOfAPlanHasALabelOfItsOwn(Setting setting) {
    ObjectNode plan = JSON.createObjectNode().put(setting.name(), setting.word());
    String words =
        setting.name().equals("measure") ? ModelWords.measureLabel(plan) : ModelWords.model(plan);
    assertFalse(words.isBlank());
    if (setting.word().contains("-")) {
      List<String> phrases = List.of(words.split(", | by "));
      assertFalse(phrases.contains(setting.word()), words);
    }
  }

  @Test
  void anEstimatorIsNamedAfterItsAuthors() {
    ObjectNode plan =
        JSON.createObjectNode()
            .put("model", "random-effects")
            .put("scale", "double-arcsine")
            .put("betweenStudyVariance", "sidik-jonkman")
            .put("interval", "t-k-minus-1");
    assertEquals(
        "random effects, double arcsine scale, between-study variance by Sidik-Jonkman, interval"
            + " by Student's t",
        ModelWords.model(plan));
  }

  @Test
  void aPosteriorNamesItsLikelihoodAndThePriorOfTauAndNoOtherInterval() {
    ObjectNode plan =
        JSON.createObjectNode()
            .put("model", "bayesian")
            .put("likelihood", "exact")
            .put("scale", "logit")
            .put("interval", "normal");
    plan.putObject("prior").putObject("tau").put("halfNormal", 1.0);
    assertEquals(
        "Bayesian by the exact likelihood, logit scale, prior of tau half-normal with scale 1",
        ModelWords.model(plan));
  }

  @Test
  void aModelThatIsOneWordOfTwoKeepsItsHyphen() {
    ObjectNode plan = JSON.createObjectNode().put("model", "three-level");
    assertEquals("three-level", ModelWords.model(plan));
    assertEquals("Bayesian", ModelWords.model(plan.put("model", "bayesian")));
  }
}
