package gapwise.carried;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.cohort.CohortDecision;
import gapwise.cohort.DecisionJson;
import gapwise.curation.EvidenceBase;
import gapwise.curation.ScreeningBase;
import gapwise.problem.WrongInputException;
import gapwise.screening.Choice;
import gapwise.screening.Protocol;
import gapwise.screening.Reader;
import gapwise.screening.Ruling;
import gapwise.screening.Stage;
import gapwise.screening.Vote;
import gapwise.store.DocumentStore;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What people settled and chose goes into another base; all of it is invented. */
class CarriedLinesTest {
  private static final Instant NOW = Instant.parse("2031-02-03T04:05:06Z");
  private static final String PAPER = "ref-00000000000000aa";

  @TempDir Path folder;

  private static Vote vote(String reader, Choice choice, Instant when) {
    return new Vote(PAPER, Stage.TITLE, new Reader(reader), choice, Optional.empty(), when);
  }

  private DocumentStore open(String name) {
    return DocumentStore.open(folder.resolve(name), Clock.systemUTC());
  }

  private static long read(DocumentStore store, String text) {
    return new CarriedLines(store)
        .read(new BufferedReader(new StringReader(text)), "beside-studies.jsonl", "EF", "moved");
  }

  @Test
  void choicesAndDecisionsGoIntoAnotherBaseOnceAndTheLaterOneStays() throws IOException {
    CohortDecision shared =
        new CohortDecision(
            "aster-2001",
            "briar-2002",
            CohortDecision.Settled.OVERLAPPING,
            "both say so",
            "AB",
            NOW,
            Optional.empty(),
            new TreeMap<>(),
            "x");
    Ruling ruling =
        new Ruling(
            PAPER, Stage.TITLE, Choice.KEEP, Optional.empty(), new Reader("EF"), "it may", NOW);
    StringWriter lines = new StringWriter();
    try (DocumentStore from = open("from")) {
      ScreeningBase screening = new ScreeningBase(from);
      screening.vote(vote("AB", Choice.KEEP, NOW));
      screening.vote(vote("CD", Choice.EXCLUDE, NOW));
      screening.settle(ruling);
      assertTrue(screening.keep(Protocol.USUAL, "AB", "agreed", 0));
      assertFalse(screening.keep(Protocol.USUAL, "CD", "agreed too", 0), "another was there");
      new EvidenceBase(from).settle(shared.key(), DecisionJson.write(shared), "AB", "both say so");
      assertEquals(5, new CarriedLines(from).write(lines));
    }
    try (DocumentStore into = open("into")) {
      Vote later = vote("CD", Choice.KEEP, NOW.plusSeconds(9));
      new ScreeningBase(into).vote(later);
      assertEquals(4, read(into, lines.toString()));
      assertEquals(0, read(into, lines.toString()));
      ScreeningBase screening = new ScreeningBase(into);
      assertEquals(List.of(vote("AB", Choice.KEEP, NOW), later), screening.votes());
      assertEquals(List.of(ruling), screening.rulings());
      assertEquals(Protocol.USUAL, screening.protocol());
      assertEquals(
          shared,
          DecisionJson.read(
              into.latest(EvidenceBase.COHORT, shared.key()).orElseThrow().json().orElseThrow()));
    }
  }

  @Test
  void aLineUnderTheKeyOfAnotherStoresNothing() throws IOException {
    StringWriter lines = new StringWriter();
    try (DocumentStore from = open("from")) {
      new ScreeningBase(from).vote(vote("AB", Choice.KEEP, NOW));
      new CarriedLines(from).write(lines);
    }
    try (DocumentStore into = open("into")) {
      String forged = lines.toString().replace("title ref-", "full-text ref-");
      assertThrows(WrongInputException.class, () -> read(into, lines + forged));
      assertEquals(0, into.lastChange());
    }
  }
}
