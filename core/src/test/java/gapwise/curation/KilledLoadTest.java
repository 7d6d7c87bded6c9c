package gapwise.curation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.reference.Identifiers;
import gapwise.reference.Published;
import gapwise.reference.Reference;
import gapwise.reference.Titles;
import gapwise.reference.format.Format;
import gapwise.reference.kept.KeptReference;
import gapwise.reference.kept.LoadedFile;
import gapwise.reference.kept.RecordSource;
import gapwise.reference.kept.SpooledRecord;
import gapwise.store.DocumentStore;
import java.io.BufferedReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Kills a process in the middle of a load of references and looks at what it left. */
class KilledLoadTest {
  /** Records that are taken before the kill, and those of a load that stands before it. */
  private static final int BEFORE_THE_KILL = 400;

  private static final int FIRST_LOAD = 3;

  @TempDir Path home;

  @Test
  void aLoadThatIsKilledLeavesNothingOfItAndAllOfTheOneBefore() throws Exception {
    Process process =
        new ProcessBuilder(
                ProcessHandle.current().info().command().orElse("java"),
                "-Xmx128m",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                Loading.class.getName(),
                home.toString())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    try (BufferedReader said = process.inputReader(StandardCharsets.UTF_8)) {
      for (int record = 0; record < BEFORE_THE_KILL; record++) {
        assertNotNull(said.readLine(), "the process ended by itself after " + record);
      }
      assertTrue(process.toHandle().destroyForcibly());
    }
    process.waitFor();
    try (DocumentStore store = DocumentStore.open(home, Clock.systemUTC())) {
      assertTrue(store.soundnessCheck().run().orElseThrow().isSound());
      ReferenceBase base = new ReferenceBase(store);
      List<KeptReference> left = new ArrayList<>();
      base.forEach(left::add);
      assertEquals(FIRST_LOAD, left.size());
      assertEquals(1, base.loads().size());
      assertEquals("first", base.loads().get(0).load().file().load());
      Loading.load(base, "second", FIRST_LOAD);
      assertEquals(2, base.loads().size(), "it can be handed in again");
    }
  }

  /** Loads a few records, then others for ever, saying each when it is taken. */
  static final class Loading {
    private Loading() {}

    public static void main(String[] arguments) {
      try (DocumentStore store = DocumentStore.open(Path.of(arguments[0]), Clock.systemUTC())) {
        ReferenceBase base = new ReferenceBase(store);
        load(base, "first", FIRST_LOAD);
        load(base, "second", Integer.MAX_VALUE);
      }
    }

    static void load(ReferenceBase base, String load, int records) {
      Iterator<SpooledRecord> all =
          new Iterator<>() {
            private int given;

            @Override
            public boolean hasNext() {
              return given < records;
            }

            @Override
            public SpooledRecord next() {
              given++;
              if (records == Integer.MAX_VALUE) {
                System.out.println(given);
                System.out.flush();
              }
              return record(load, given);
            }
          };
      LoadedFile file = new LoadedFile(load, load + ".ris", Format.RIS, "UTF-8", 1, 0, 0);
      base.keep(all, List.of(file), List.of(), "AB", "until killed");
    }

    private static SpooledRecord record(String load, int number) {
      Reference reference =
          new Reference(
              Optional.of("n" + number),
              Optional.empty(),
              List.of(),
              new Titles("Wax for limb " + number, Optional.empty(), List.of()),
              List.of(),
              new Published(
                  Optional.empty(),
                  Optional.empty(),
                  Optional.empty(),
                  OptionalInt.of(2001),
                  Optional.empty(),
                  Optional.empty(),
                  Optional.empty(),
                  Optional.empty(),
                  Optional.empty()),
              Identifiers.none(),
              Optional.of("bone ".repeat(200)),
              List.of(),
              Optional.empty(),
              List.of(),
              List.of());
      return new SpooledRecord(
          reference, new RecordSource(load, load + ".ris", Format.RIS, number, number));
    }
  }
}
