package gapwise.report;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.Runner;
import gapwise.analysis.testing.Plans;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What is said where studies are too many for a profile of each limit. */
class ManyStudiesTest {
  @Test
  void limitsOfMoreThanAThousandStudiesAreByStandardErrors() {
    ArrayNode rows = Plans.rows();
    for (int i = 0; i < 1001; i++) {
      Plans.row(rows, "events", 3 + i % 5, "total", 12, "length", i % 9);
    }
    ObjectNode plan = Plans.on(rows, "measure", "proportion", "model", "exact-likelihood");
    plan.putArray("moderators").add("length");
    PlanOutcome.Done done = (PlanOutcome.Done) Runner.withoutEvidence().run(plan, Optional.empty());
    String text = MethodsParagraph.of(done.result(), WhatWasRunTest.ORIGIN).text();
    assertTrue(text.contains("95 % intervals by standard errors"), text);
  }
}
