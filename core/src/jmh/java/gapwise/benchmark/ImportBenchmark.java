package gapwise.benchmark;

import gapwise.exchange.Import;
import gapwise.exchange.Imported;
import gapwise.exchange.LargeImport;
import gapwise.table.TableFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
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
 * A filled template read and checked: 50 rows of outcomes and 50 of patients a study, as CSV files.
 * Ten times the studies should take ten times as long.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class ImportBenchmark {
  private static final int ROWS_EACH = 50;

  @Param({"10", "100", "1000"})
  private int studies;

  private Path folder = Path.of("");
  private List<TableFile> files = List.of();

  @Setup(Level.Trial)
  public void write() throws IOException {
    folder = Files.createTempDirectory("import-benchmark");
    LargeImport.write(folder, studies, ROWS_EACH);
    files =
        Stream.of("studies", "arms", "outcomes", "patients")
            .map(sheet -> TableFile.of(folder.resolve(sheet + ".csv")))
            .toList();
  }

  @Benchmark
  public Imported filledTemplate() {
    return Import.read(files, Set.of(), rows -> {});
  }

  @TearDown(Level.Trial)
  public void delete() throws IOException {
    for (TableFile file : files) {
      Files.deleteIfExists(folder.resolve(file.name()));
    }
    Files.deleteIfExists(folder);
  }
}
