package gapwise.reference.format;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.problem.Problem;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;

/**
 * Reads a file of references, whatever its name: finds encoding and format, parts it into records
 * and hands over what became of each while it reads on, so that a file of any length needs the
 * memory of one record.
 */
public final class ReferenceReader {
  private final String name;
  private final Consumer<ReadRecord> taker;
  private final List<Problem> problems = new ArrayList<>();
  private final Set<String> keys = new HashSet<>();
  private int read;
  private int doubtful;
  private int refused;

  private ReferenceReader(String name, Consumer<ReadRecord> taker) {
    this.name = name;
    this.taker = taker;
  }

  /**
   * Reads a file.
   *
   * @param file the file
   * @param taker is handed each record in the order of the file
   * @return what became of the file as a whole
   * @throws IOException if the file cannot be opened or read from its medium
   */
  public static FileAnswer read(ReferenceFile file, Consumer<ReadRecord> taker) throws IOException {
    FileLook look = FileLook.at(file);
    ReferenceReader reader = new ReferenceReader(file.name(), taker);
    reader.problems.addAll(look.problems());
    if (look.format().isPresent()) {
      Format format = look.format().get();
      try (TextSource source = new TextSource(file, look.encoding())) {
        reader.records(format, source);
      }
      reader.lookAtName(format);
    }
    return reader.answer(look);
  }

  /**
   * The format of a file, as it starts; empty where it is none that is read.
   *
   * @throws IOException if the file cannot be opened or read from its medium
   */
  public static Optional<Format> format(ReferenceFile file) throws IOException {
    return FileLook.at(file).format();
  }

  private void records(Format format, TextSource source) throws IOException {
    switch (format) {
      case RIS -> new RisRecords(source, parted(RisReference::of)).read();
      case MEDLINE -> new MedlineRecords(source, parted(MedlineReference::of)).read();
      case BIBTEX ->
          new BibtexEntries(
                  source,
                  parted(
                      raw ->
                          BibtexReference.of(
                              raw, raw.id().map(key -> !keys.add(key)).orElse(false))))
              .read();
      case CSL_JSON -> new JsonItems(source, items()).read();
    }
  }

  private RecordTaker parted(java.util.function.Function<RawRecord, ReadRecord> reading) {
    return new RecordTaker() {
      @Override
      public void record(RawRecord record) {
        take(reading.apply(record));
      }

      @Override
      public void file(Problem problem) {
        problems.add(problem);
      }
    };
  }

  private JsonItems.Taker items() {
    return new JsonItems.Taker() {
      @Override
      public void item(
          int number, int line, JsonNode object, List<String> oddities, boolean shortened) {
        take(CslReference.of(number, line, object, oddities, shortened));
      }

      @Override
      public void broken(int number, int line, String why) {
        take(
            new ReadRecord.Refused(
                number,
                line,
                Optional.empty(),
                List.of(
                    new Problem(
                        Gathering.place(number, line, ""),
                        "broken-item",
                        "The item cannot be read: " + why))));
      }

      @Override
      public void file(Problem problem) {
        problems.add(problem);
      }
    };
  }

  private void take(ReadRecord record) {
    if (record instanceof ReadRecord.Read good) {
      read++;
      doubtful += good.isDoubtful() ? 1 : 0;
    } else {
      refused++;
    }
    taker.accept(record);
  }

  /** A name that promises another format is told, as the export may be another than was meant. */
  private void lookAtName(Format format) {
    String small = name.toLowerCase(java.util.Locale.ROOT);
    Optional<Format> promised =
        small.endsWith(".ris")
            ? Optional.of(Format.RIS)
            : small.endsWith(".nbib") || small.endsWith(".medline")
                ? Optional.of(Format.MEDLINE)
                : small.endsWith(".bib")
                    ? Optional.of(Format.BIBTEX)
                    : small.endsWith(".json") ? Optional.of(Format.CSL_JSON) : Optional.empty();
    if (promised.isPresent() && promised.get() != format) {
      problems.add(
          new Problem(
              "",
              "other-format",
              "The name of the file promises "
                  + promised.get().label()
                  + ", but it holds "
                  + format.label()
                  + " and was read as that."));
    }
  }

  private FileAnswer answer(FileLook look) {
    if (look.format().isPresent() && read + refused == 0) {
      problems.add(
          new Problem(
              "",
              "no-records",
              "The file looks like "
                  + look.format().get().label()
                  + " but holds no record; export it again."));
    }
    return new FileAnswer(
        name, look.format(), look.charsetName(), read, doubtful, refused, problems);
  }
}
