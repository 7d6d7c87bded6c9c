package gapwise.curation;

import gapwise.reference.format.FileAnswer;
import gapwise.reference.format.Format;
import gapwise.reference.format.ReferenceFile;
import gapwise.reference.format.ReferenceReader;
import gapwise.reference.kept.Compared;
import gapwise.reference.kept.KeptLine;
import gapwise.reference.kept.LoadedFile;
import gapwise.reference.kept.OpenPair;
import gapwise.reference.kept.PairsAsked;
import gapwise.reference.kept.Shelf;
import gapwise.reference.kept.Spool;
import gapwise.reference.testing.InventedSearches;
import gapwise.store.DocumentStore;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.Writer;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Times and memory of references that are kept and compared, for invented searches of some sizes.
 */
public final class MeasuredReferences {
  private final Path folder;
  private long start;

  private MeasuredReferences(Path folder) {
    this.folder = folder;
  }

  /** Seconds of computing since the last call, which other work on the machine does not change. */
  private double seconds() {
    long now = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    double passed = (now - start) / 1e9;
    start = now;
    return passed;
  }

  /** Bytes in use once nothing can be let go of, in millions. */
  private static long megabytes() {
    for (int i = 0; i < 3; i++) {
      System.gc();
    }
    return (Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory()) / 1_000_000;
  }

  private void measure(int records) throws IOException {
    List<ReferenceFile> files = files(records);
    long before = megabytes();
    seconds();
    Path spool = folder.resolve("spool-" + records);
    List<LoadedFile> loaded = new ArrayList<>();
    try (Writer lines = Files.newBufferedWriter(spool)) {
      for (ReferenceFile file : files) {
        loaded.add(spooled(file, lines));
      }
    }
    double reading = seconds();
    try (DocumentStore store =
        DocumentStore.open(folder.resolve("home-" + records), Clock.systemUTC())) {
      ReferenceBase base = new ReferenceBase(store);
      keep(base, spool, loaded);
      double keeping = seconds();
      keep(base, spool, loaded);
      double again = seconds();
      List<KeptLine> lines = new ArrayList<>();
      base.forEach(kept -> lines.add(KeptLine.of(kept)));
      Shelf shelf = Shelf.of(lines, List.of());
      double opening = seconds();
      long shelved = megabytes() - before;
      seconds();
      Compared compared = Compared.of(shelf.lines(), Map.of());
      double comparing = seconds();
      List<OpenPair> open = asked(compared, shelf).open();
      double asking = seconds();
      int told = asked(compared, shelf).standings().size();
      double standing = seconds();
      long all = megabytes() - before;
      System.out.printf(
          Locale.ROOT,
          "%,d records in %d files: read %.1f s, kept %.1f s, handed in again %.1f s, opened %.1f s"
              + " (%d MB), compared %.1f s, %,d pairs asked %.2f s, %,d papers told of %.2f s; in all"
              + " %d MB (most given: %d MB)%n",
          shelf.lines().size(),
          files.size(),
          reading,
          keeping,
          again,
          opening,
          shelved,
          comparing,
          open.size(),
          asking,
          told,
          standing,
          all,
          Runtime.getRuntime().maxMemory() / 1_000_000);
    }
  }

  private static PairsAsked asked(Compared compared, Shelf shelf) {
    return PairsAsked.of(compared, shelf.decisions(), shelf.groups());
  }

  private static void keep(ReferenceBase base, Path spool, List<LoadedFile> loaded)
      throws IOException {
    try (BufferedReader lines = Files.newBufferedReader(spool)) {
      base.keep(Spool.read(lines), loaded, List.of(), "AB", "measured");
    }
  }

  private static LoadedFile spooled(ReferenceFile file, Writer lines) throws IOException {
    String key = LoadedFile.key(file);
    Optional<Format> format = ReferenceReader.read(file, record -> {}).format();
    FileAnswer answer =
        ReferenceReader.read(
            file,
            record -> {
              try {
                Spool.add(lines, key, file.name(), format.orElseThrow(), record);
              } catch (IOException unwritten) {
                throw new java.io.UncheckedIOException(unwritten);
              }
            });
    return LoadedFile.of(key, answer);
  }

  /** Searches with about so many records in all: a paper stands in some 1.9 files. */
  private List<ReferenceFile> files(int records) throws IOException {
    InventedSearches searches = new InventedSearches(Math.max(1, (int) (records / 1.9)), 7);
    List<ReferenceFile> files = new ArrayList<>();
    List<String> texts = searches.texts();
    for (int at = 0; at < texts.size(); at++) {
      Path file = folder.resolve(records + "-" + InventedSearches.name(at) + ".txt");
      Files.writeString(file, texts.get(at));
      files.add(ReferenceFile.at(file));
    }
    return files;
  }

  /** Measures some numbers of records, or 160, 5,000 and 20,000. */
  public static void main(String[] sizes) throws IOException {
    MeasuredReferences measured =
        new MeasuredReferences(Files.createTempDirectory("measured-references"));
    measured.measure(1_000);
    for (String size : sizes.length == 0 ? new String[] {"160", "5000", "20000"} : sizes) {
      measured.measure(Integer.parseInt(size));
    }
  }
}
