package gapwise.curation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.carried.CarriedLines;
import gapwise.problem.WrongInputException;
import gapwise.reference.format.FileAnswer;
import gapwise.reference.format.ReferenceFile;
import gapwise.reference.format.ReferenceReader;
import gapwise.reference.format.SearchDone;
import gapwise.reference.kept.KeptLoad;
import gapwise.reference.kept.KeptReference;
import gapwise.reference.kept.LoadedFile;
import gapwise.reference.kept.ReferenceDecision;
import gapwise.reference.kept.Spool;
import gapwise.reference.kept.SpooledRecord;
import gapwise.reference.testing.InventedSearches;
import gapwise.store.DocumentStore;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** References in and out of the store; all papers are invented. */
class ReferenceBaseTest {
  private static final Instant NOW = Instant.parse("2031-02-03T04:05:06Z");

  @TempDir Path folder;
  private DocumentStore store;
  private ReferenceBase base;

  @BeforeEach
  void open() {
    store = DocumentStore.open(folder.resolve("home"), Clock.fixed(NOW, ZoneOffset.UTC));
    base = new ReferenceBase(store);
  }

  @AfterEach
  void close() {
    store.close();
  }

  private static String record(String id, String title, String more) {
    return "TY  - JOUR\nID  - "
        + id
        + "\nTI  - "
        + title
        + "\nAU  - Kell, Bo\nPY  - 2001\n"
        + more
        + "ER  - \n";
  }

  /** A load that was read and waits. */
  private record Waiting(String lines, List<LoadedFile> files) {
    static Waiting of(ReferenceFile... files) throws IOException {
      StringWriter lines = new StringWriter();
      List<LoadedFile> loaded = new ArrayList<>();
      for (ReferenceFile file : files) {
        String key = LoadedFile.key(file);
        FileAnswer look = ReferenceReader.read(file, record -> {});
        ReferenceReader.read(
            file,
            record -> {
              try {
                Spool.add(lines, key, file.name(), look.format().orElseThrow(), record);
              } catch (IOException impossible) {
                throw new UncheckedIOException(impossible);
              }
            });
        loaded.add(LoadedFile.of(key, look));
      }
      return new Waiting(lines.toString(), loaded);
    }

    Iterator<SpooledRecord> records() {
      return Spool.read(new BufferedReader(new StringReader(lines)));
    }
  }

  private List<KeptLoad> keep(ReferenceFile... files) throws IOException {
    Waiting waiting = Waiting.of(files);
    return base.keep(waiting.records(), waiting.files(), List.of(), "AB", "a load");
  }

  private static ReferenceFile ris(String name, String... records) {
    return ReferenceFile.of(name, String.join("\n", records));
  }

  private TreeMap<String, KeptReference> all() {
    TreeMap<String, KeptReference> all = new TreeMap<>();
    base.forEach(kept -> all.put(kept.id(), kept));
    return all;
  }

  @Test
  void aLoadIsKeptWithItsSourcesAndReadBackAsItWasRead() throws IOException {
    for (String text : new InventedSearches(60, 5).texts()) {
      ReferenceFile file = ReferenceFile.of("search.txt", text);
      Waiting waiting = Waiting.of(file);
      List<SpooledRecord> records = new ArrayList<>();
      waiting.records().forEachRemaining(records::add);
      keep(file);
      for (SpooledRecord record : records) {
        List<KeptReference> found =
            all().values().stream().filter(k -> k.sources().contains(record.source())).toList();
        assertEquals(1, found.size(), record.toString());
        assertEquals(record.reference(), found.get(0).reference());
        assertEquals(found.get(0), base.find(found.get(0).id()).orElseThrow());
      }
    }
  }

  @Test
  void theSameFileAddsNothingUnderAnyName() throws IOException {
    String text = record("p1", "Wax", "") + record("p2", "Nails", "");
    List<KeptLoad> first = keep(ris("one.ris", text));
    assertEquals(2, first.get(0).added());
    long change = store.lastChange();
    List<KeptLoad> again = keep(ris("other (1).ris", text));
    assertEquals(0, again.get(0).added() + again.get(0).changed());
    assertEquals(2, again.get(0).known());
    assertEquals(change, store.lastChange());
    assertEquals(1, base.loads().size());
    assertEquals("AB", base.loads().get(0).stamp().who());
  }

  @Test
  void aLaterExportOfTheSameNameGivesTheNextVersionUnderTheSameId() throws IOException {
    keep(ris("one.ris", record("p1", "Wax", ""), record("p2", "Nails", "")));
    List<String> ids = List.copyOf(all().keySet());
    KeptLoad later =
        keep(ris(
                "one.ris",
                record("p3", "Rings", ""),
                record("p1", "Wax.", "AB  - Now with an abstract.\n"),
                record("p2", "Nails", "")))
            .get(0);
    assertEquals(List.of(1, 1, 1), List.of(later.added(), later.changed(), later.known()));
    assertTrue(all().keySet().containsAll(ids));
    KeptReference wax =
        all().values().stream().filter(k -> k.title().equals("Wax")).findFirst().orElseThrow();
    assertEquals(Optional.of("Now with an abstract."), wax.summary());
    assertEquals(2, wax.sources().size());
    assertEquals(2, store.history(ReferenceBase.REFERENCE, wax.id()).size());
  }

  @Test
  void noFileSpeaksForAnother() throws IOException {
    keep(ris("one.ris", record("p1", "Wax", "AB  - First.\n"), record("p2", "Nails", "")));
    KeptLoad other =
        keep(ris("two.ris", record("p1", "Wax", "AB  - Second.\n"), record("p2", "Nails", "")))
            .get(0);
    assertEquals(List.of(1, 0, 1), List.of(other.added(), other.changed(), other.known()));
    assertEquals(3, all().size());
  }

  @Test
  void recordsThatStandTwiceInAFileAreAllKept() throws IOException {
    String text =
        record("p1", "Wax", "") + record("p1", "Wax", "") + record("p1", "Wax", "VL  - 3\n");
    assertEquals(3, keep(ris("one.ris", text)).get(0).added());
    assertEquals(3, all().size());
    assertEquals(0, keep(ris("one.ris", text)).get(0).added());
    KeptLoad longer = keep(ris("one.ris", text + record("p9", "New", ""))).get(0);
    assertEquals(List.of(1, 0, 3), List.of(longer.added(), longer.changed(), longer.known()));
  }

  @Test
  void twoFilesOfOneLoadThatGiveTheSameRecordAreTwoSourcesOfIt() throws IOException {
    keep(
        ris("one.ris", record("p1", "Wax", "")),
        ris("two.ris", record("p1", "Wax", ""), record("p2", "Nails", "")));
    assertEquals(2, all().size());
    assertEquals(3, all().values().stream().mapToInt(one -> one.sources().size()).sum());
  }

  @Test
  void aLoadThatBreaksOffLeavesNothing() throws IOException {
    Waiting waiting =
        Waiting.of(ris("one.ris", record("p1", "Wax", ""), record("p2", "Nails", "")));
    Iterator<SpooledRecord> all = waiting.records();
    Iterator<SpooledRecord> broken =
        new Iterator<>() {
          private int given;

          @Override
          public boolean hasNext() {
            return true;
          }

          @Override
          public SpooledRecord next() {
            if (given++ > 0) {
              throw new IllegalStateException("the power is gone");
            }
            return all.next();
          }
        };
    assertThrows(
        IllegalStateException.class,
        () -> base.keep(broken, waiting.files(), List.of(), "AB", "a load"));
    assertEquals(0, store.lastChange());
    assertEquals(List.of(), base.loads());
  }

  private static SearchDone search(int count) {
    return new SearchDone(
        "Invented Index",
        LocalDate.of(2031, 2, 3),
        "wax AND gap",
        OptionalInt.of(count),
        Optional.of("one.ris"),
        Optional.empty(),
        Optional.of("AB"));
  }

  @Test
  void theLogOfSearchesIsKeptOnceAndMended() throws IOException {
    Waiting waiting = Waiting.of(ris("one.ris", record("p1", "Wax", "")));
    base.keep(waiting.records(), waiting.files(), List.of(search(2)), "AB", "a load");
    base.keep(waiting.records(), waiting.files(), List.of(search(2)), "AB", "a load");
    base.keep(waiting.records(), waiting.files(), List.of(search(1)), "AB", "a load");
    assertEquals(1, base.searches().size());
    assertEquals(search(1), base.searches().get(0).search());
    assertEquals(Optional.of(waiting.files().get(0).load()), base.searches().get(0).load());
  }

  @Test
  void allOfItGoesIntoAnotherBaseAndComesAgainAsNothingNew() throws IOException {
    for (String text : new InventedSearches(40, 7).texts()) {
      keep(ReferenceFile.of("search.txt", text));
    }
    Waiting waiting = Waiting.of(ris("one.ris", record("p1", "Wax", "")));
    base.keep(waiting.records(), waiting.files(), List.of(search(2)), "AB", "a load");
    List<String> ids = List.copyOf(all().keySet());
    ReferenceDecision decision =
        new ReferenceDecision(
            ids.get(0), ids.get(1), ReferenceDecision.Settled.SAME, "looked", "AB", NOW, "x");
    base.settle(decision);
    StringWriter lines = new StringWriter();
    int count = new CarriedLines(store).write(lines);
    assertEquals(lines.toString().lines().count(), count);
    try (DocumentStore other =
        DocumentStore.open(folder.resolve("other"), Clock.fixed(NOW, ZoneOffset.UTC))) {
      ReferenceBase target = new ReferenceBase(other);
      CarriedLines reading = new CarriedLines(other);
      assertEquals(count, read(reading, lines.toString()));
      TreeMap<String, KeptReference> there = new TreeMap<>();
      target.forEach(kept -> there.put(kept.id(), kept));
      assertEquals(all(), there);
      assertEquals(List.of(decision), target.decisions());
      assertEquals(base.searches(), target.searches());
      assertEquals(base.loads().size(), target.loads().size());
      assertEquals(0, read(reading, lines.toString()));
      ReferenceDecision later =
          new ReferenceDecision(
              ids.get(0),
              ids.get(1),
              ReferenceDecision.Settled.DIFFERENT,
              "looked again",
              "CD",
              NOW.plusSeconds(60),
              "x");
      target.settle(later);
      assertEquals(0, read(reading, lines.toString()));
      assertEquals(List.of(later), target.decisions());
      long change = other.lastChange();
      WrongInputException wrong =
          assertThrows(
              WrongInputException.class,
              () -> read(reading, lines + "{\"kind\":\"study\",\"key\":\"a\",\"content\":{}}\n"));
      assertFalse(wrong.problems().isEmpty());
      assertEquals(change, other.lastChange());
    }
  }

  private static long read(CarriedLines lines, String text) {
    return lines.read(
        new BufferedReader(new StringReader(text)), "beside-studies.jsonl", "CD", "moved");
  }
}
