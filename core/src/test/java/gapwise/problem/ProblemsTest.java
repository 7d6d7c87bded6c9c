package gapwise.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class ProblemsTest {
  @Test
  void upToTheMostEveryProblemStandsForItself() {
    Problems problems = new Problems();
    for (int i = 0; i < Problems.MOST; i++) {
      problems.add("row " + i, "wrong", "Correct it.");
    }
    assertEquals(Problems.MOST, problems.list().size());
    assertEquals("row " + (Problems.MOST - 1), problems.list().get(Problems.MOST - 1).where());
  }

  @Test
  void whatIsMoreIsCountedInOneLastEntry() {
    Problems problems = new Problems();
    problems.addAll(List.of(new Problem("first", "wrong", "Correct it.")));
    for (int i = 0; i < Problems.MOST + 1_499; i++) {
      problems.add("row " + i, "wrong", "Correct it.");
    }
    assertEquals(Problems.MOST + 1_500, problems.size());
    List<Problem> told = problems.list();
    assertEquals(Problems.MOST + 1, told.size());
    assertEquals("first", told.get(0).where());
    Problem last = told.get(Problems.MOST);
    assertEquals("more-problems", last.code());
    assertTrue(last.message().startsWith("1,500 more"), last.message());
  }

  @Test
  void whatQuotesABookKeepsItsBeginningAndItsEnd() {
    Problem problem =
        new Problem("f".repeat(9_000), "wrong", "found '" + "x".repeat(50_000) + "'; mend it");
    assertTrue(problem.where().length() <= 300, "" + problem.where().length());
    assertTrue(problem.message().length() <= 2_000, "" + problem.message().length());
    assertTrue(problem.message().startsWith("found 'x"), problem.message());
    assertTrue(problem.message().endsWith("mend it"), problem.message());
  }

  @Test
  void aLetterOfTwoPartsIsNotCutInHalf() {
    String bones = "\uD83E\uDDB4".repeat(3_000);
    for (String before : List.of("", "a")) {
      String told = new Problem("", "wrong", before + bones).message();
      assertEquals(
          told,
          new String(
              told.getBytes(java.nio.charset.StandardCharsets.UTF_8),
              java.nio.charset.StandardCharsets.UTF_8));
    }
  }
}
