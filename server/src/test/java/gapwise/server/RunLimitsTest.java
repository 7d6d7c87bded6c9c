package gapwise.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.budget.Limit;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What one plan may cost on the command line, and how a person sets other limits. */
class RunLimitsTest {
  @TempDir private Path folder;
  private String plan;

  private record Called(int exit, String out, String err) {}

  @BeforeEach
  void plan() throws Exception {
    Files.writeString(folder.resolve("rows.csv"), "events,total\n9,10\n17,20\n12,15\n");
    plan =
        Files.writeString(folder.resolve("plan.json"), "{\"source\":{\"table\":\"rows.csv\"}}")
            .toString();
  }

  private static Called call(String... arguments) {
    PrintStream out = System.out;
    PrintStream err = System.err;
    ByteArrayOutputStream printed = new ByteArrayOutputStream();
    ByteArrayOutputStream told = new ByteArrayOutputStream();
    System.setOut(new PrintStream(printed, true, StandardCharsets.UTF_8));
    System.setErr(new PrintStream(told, true, StandardCharsets.UTF_8));
    try {
      int exit = Gapwise.commandLine().execute(arguments);
      return new Called(
          exit, printed.toString(StandardCharsets.UTF_8), told.toString(StandardCharsets.UTF_8));
    } finally {
      System.setOut(out);
      System.setErr(err);
    }
  }

  private Called run(String... limits) {
    List<String> arguments = new ArrayList<>(List.of("run"));
    for (String limit : limits) {
      arguments.addAll(List.of("--limit", limit));
    }
    arguments.add(plan);
    return call(arguments.toArray(new String[0]));
  }

  @Test
  void aPlanOverALimitThatIsNamedIsRefused() {
    Called called = run("rows=2", "seconds=600");
    assertEquals(2, called.exit());
    assertTrue(called.out().contains("over-the-limit"), called.out());
    assertTrue(called.err().contains("at most 2 are taken"), called.err());
  }

  @Test
  void aLimitThatIsRaisedOrTakenAwayLetsThePlanThrough() {
    for (String[] limits :
        new String[][] {{}, {"rows=3"}, {"none"}, {"none", "seconds=60"}, {"seconds=1000000"}}) {
      Called called = run(limits);
      assertEquals(0, called.exit(), called.err());
      assertTrue(called.out().contains("\"summary\""), called.out());
    }
  }

  @Test
  void withoutLimitsThoseNamedBesideStillHold() {
    assertEquals(2, run("none", "rows=2").exit());
    assertEquals(2, run("rows=2", "none").exit());
  }

  @Test
  void aLimitThatThereIsNotIsToldWithThoseThereAre() {
    Called called = run("patience=3");
    assertEquals(2, called.exit());
    assertEquals("", called.out());
    for (String code : Limit.codes()) {
      assertTrue(called.err().contains(code), called.err());
    }
  }

  @Test
  void aLimitThatIsNoNumberAboveZeroIsTold() {
    for (String wrong : List.of("rows", "rows=", "rows=0", "rows=-1", "rows=1.5", "rows=ten")) {
      Called called = run(wrong);
      assertEquals(2, called.exit(), wrong);
      assertEquals("", called.out(), wrong);
      assertTrue(called.err().contains("--limit"), called.err());
    }
  }

  @Test
  void theHelpTellsOfTheOption() {
    assertTrue(call("run", "--help").out().contains("--limit"), call("run", "--help").out());
  }
}
