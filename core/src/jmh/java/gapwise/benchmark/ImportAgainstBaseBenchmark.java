package gapwise.benchmark;

import gapwise.curation.EvidenceBase;
import gapwise.curation.StudiesAt;
import gapwise.evidence.Study;
import gapwise.exchange.Import;
import gapwise.exchange.Imported;
import gapwise.exchange.KnownEvidence;
import gapwise.exchange.LargeImport;
import gapwise.store.DocumentStore;
import gapwise.table.TableFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Ten studies read, checked and held against an evidence base of invented studies, as an import does
 * before anything is stored.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class ImportAgainstBaseBenchmark {
  private static final int ROWS_EACH = 10;
  private static final int FRESH = 10;

  @Param({"1", "1000", "5000"})
  private int base;

  private Path folder = Path.of("");
  private List<TableFile> files = List.of();
  private Opened opened = Opened.NONE;

  /** The store of the base with one state of it. */
  private record Opened(AutoCloseable store, KnownEvidence known) {
    static final Opened NONE = new Opened(() -> {}, KnownEvidence.NONE);
  }

  @Setup(Level.Trial)
  public void write() throws IOException {
    folder = Files.createTempDirectory("import-against-base");
    Path fresh = Files.createDirectory(folder.resolve("fresh"));
    LargeImport.write(fresh, FRESH, ROWS_EACH);
    files = files(fresh);
    Path all = Files.createDirectory(folder.resolve("all"));
    LargeImport.write(all, FRESH + base, ROWS_EACH);
    List<Study> studies =
        ((Imported.Ready)
                Import.read(files(all), KnownEvidence.NONE, key -> true, rows -> {}))
            .studies();
    DocumentStore store = DocumentStore.open(folder.resolve("store"), Clock.systemUTC());
    EvidenceBase kept = new EvidenceBase(store);
    kept.saveAll(
        studies.subList(FRESH, FRESH + base).iterator(), "benchmark", "invented", List.of());
    StudiesAt latest = kept.latest();
    opened =
        new Opened(
            store, consumer -> latest.forEachSound(study -> consumer.accept(study.study())));
  }

  private static List<TableFile> files(Path of) {
    return Stream.of("studies", "arms", "outcomes", "patients")
        .map(sheet -> TableFile.of(of.resolve(sheet + ".csv")))
        .toList();
  }

  @Benchmark
  public Imported heldAgainstBase() {
    return Import.read(files, opened.known(), key -> true, rows -> {});
  }

  @TearDown(Level.Trial)
  public void delete() throws Exception {
    opened.store().close();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }
}
