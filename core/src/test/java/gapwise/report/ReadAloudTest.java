package gapwise.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.Runner;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Whole texts, each read aloud and held against what a journal of medicine asks of a paragraph on
 * statistical methods: what was measured, by which model, estimator and intervals, what was left
 * out or added, with which software. No outside source prints these words; the files are ours.
 */
class ReadAloudTest {
  private static MethodsParagraph of(String plan) throws IOException {
    ObjectNode json = WhatWasRunTest.plans().get(plan);
    PlanOutcome outcome = Runner.withoutEvidence().run(json, Optional.empty());
    return MethodsParagraph.of(((PlanOutcome.Done) outcome).result(), WhatWasRunTest.ORIGIN);
  }

  private static String expected(String plan) throws IOException {
    String file = "/report/" + plan.replace(' ', '-') + ".txt";
    try (var in = ReadAloudTest.class.getResourceAsStream(file)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "random odds-ratio",
        "exact proportions",
        "bayesian proportions",
        "regression",
        "network",
        "multiverse proportions",
        "rebuilt curves",
        "means"
      })
  void aTextReadsAsItWasAccepted(String plan) throws IOException {
    String text = of(plan).text();
    String java = "on Java " + Runtime.version().feature() + ".";
    String before = text.substring(0, text.indexOf("\nAppendix: "));
    assertEquals(expected(plan), before.replace(java, "on Java J."));
  }

  @Test
  void theAppendixIsThePlanThatGivesTheSameResult() throws IOException {
    String text = of("regression").text();
    String heading = "Appendix: the plan of the analysis\n\n";
    String plan = text.substring(text.indexOf(heading) + heading.length());
    ObjectNode again = (ObjectNode) new ObjectMapper().readTree(plan);
    assertEquals(of("regression").plan().toString(), again.toString());
    PlanOutcome outcome = Runner.withoutEvidence().run(again, Optional.empty());
    assertEquals(
        text,
        MethodsParagraph.of(((PlanOutcome.Done) outcome).result(), WhatWasRunTest.ORIGIN).text());
  }

  @Test
  void oneStudyIsNotSaidToBePooled() throws IOException {
    String text = String.join(" ", of("single study").paragraphs().get(1));
    assertTrue(text.contains("nothing was pooled"), text);
    assertTrue(!text.contains("random") && !text.contains("variance between"), text);
  }

  @Test
  void rowsWithoutAnEffectOfTheirOwnAreCountedWhereTheirCountsEnter() throws IOException {
    assertTrue(of("conditional").paragraphs().get(0).contains("Of these rows, 5 were analysed."));
    assertTrue(of("network").paragraphs().get(0).contains("All 11 rows were analysed."));
  }
}
