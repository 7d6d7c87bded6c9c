package gapwise.server.home;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.decision.option.Aspect;
import gapwise.decision.option.OptionQuestion;
import gapwise.decision.option.PairWithin;
import gapwise.server.address.Address;
import gapwise.server.address.OptionAddress;
import gapwise.server.testing.RunningServer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A table of the demonstration that is worked out bit by bit. */
class RememberedOptionsTest {
  @TempDir static Path folder;
  private static RunningServer running;

  @BeforeAll
  static void open() {
    running = RunningServer.withDemonstration(folder.resolve("home"));
  }

  @AfterAll
  static void close() {
    running.close();
  }

  private static OptionQuestion question(String to) {
    return OptionAddress.question(Address.parse("bone=tibia&from=4&to=" + to));
  }

  @Test
  void pairsThatAreToldOneByOneAreThoseThatAreToldAtOnce() {
    try (Hold hold = running.home().hold()) {
      RememberedOptions options = hold.evidence().options();
      OptionQuestion oneByOne = question("7.31");
      int stops = 0;
      for (Aspect aspect : oneByOne.aspects()) {
        while (!options.hasCompared(oneByOne, aspect)) {
          options.compare(oneByOne, aspect, () -> true);
          stops++;
        }
      }
      List<PairWithin> told = options.compared(oneByOne).within();
      assertTrue(told.size() > 2, "pairs: " + told.size());
      assertTrue(stops >= told.size(), stops + " stops");
      assertEquals(names(told), names(options.compared(question("7.32")).within()));
    }
  }

  private static List<String> names(List<PairWithin> pairs) {
    List<String> names = new ArrayList<>();
    for (PairWithin pair : pairs) {
      names.add(
          pair.column().aspect()
              + " "
              + pair.first().code()
              + " "
              + pair.second().code()
              + " "
              + pair.studies()
              + " "
              + pair.difference()
              + " "
              + pair.compared());
    }
    return names;
  }

  /** Nobody's work is lost to others, however many ask meanwhile; a few more than once did so. */
  @Test
  void thoseWhoAskByTurnsAllComeToTheirTables() {
    try (Hold hold = running.home().hold()) {
      RememberedOptions options = hold.evidence().options();
      List<OptionQuestion> questions =
          IntStream.range(0, 8).mapToObj(i -> question("6." + (i + 1))).toList();
      assertEquals(8, Set.copyOf(questions).size());
      List<Pieces> all = questions.stream().map(one -> Pieces.ofTable(options, one)).toList();
      int outcomes = questions.get(0).aspects().size();
      for (int turn = 0; turn < outcomes; turn++) {
        for (OptionQuestion question : questions) {
          options.report(question, question.aspects().get(turn));
        }
      }
      for (OptionQuestion question : questions) {
        for (Aspect aspect : question.aspects()) {
          assertTrue(options.hasReported(question, aspect), question + " " + aspect);
        }
        options.table(question);
      }
      assertTrue(all.stream().allMatch(Pieces::areThere));
    }
  }

  @Test
  void aTableIsThereWhenEachOfItsOutcomesIs() {
    try (Hold hold = running.home().hold()) {
      RememberedOptions options = hold.evidence().options();
      OptionQuestion question = question("7.33");
      Pieces pieces = Pieces.ofTable(options, question);
      for (Aspect aspect : question.aspects()) {
        assertFalse(options.hasReported(question, aspect));
        options.report(question, aspect);
        assertTrue(options.hasReported(question, aspect));
        assertFalse(pieces.areThere());
      }
      assertEquals(question.aspects().size(), options.table(question).columns().size());
      assertTrue(pieces.areThere());
    }
  }
}
