package gapwise.server.job.reference;

import gapwise.reference.Reference;
import gapwise.reference.format.CslWriter;
import gapwise.reference.format.ReadRecord;
import gapwise.reference.format.RisWriter;
import gapwise.reference.pair.Onlooker;
import gapwise.reference.pair.ProposalsCsv;
import gapwise.reference.pair.RecordKey;
import gapwise.reference.pair.ReferenceProposals;
import gapwise.store.OwnerOnly;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;

/**
 * Writes what is read while it is read, whole, as RIS and as CSL-JSON, every reference under the
 * label by which the proposals name it, which no other one has; and as it waits to be kept. Not
 * thread-safe.
 */
final class Exports implements Onlooker, AutoCloseable {
  /** Records between two words on how far it has come. */
  private static final int STEP = 100;

  /** Holds what waits to be kept. */
  static final String WAITING = "waiting.jsonl";

  private final Consumer<ReferenceState> progress;
  private final Writer ris;
  private final Writer json;
  private final Writer waiting;
  private final CslWriter.Items items;
  private final List<HandedFile> files;
  private int file;
  private int records;

  Exports(Path folder, List<HandedFile> files, Consumer<ReferenceState> progress)
      throws IOException {
    this.progress = progress;
    this.files = List.copyOf(files);
    ris = writer(folder, ReferenceFileOut.RIS.file());
    try {
      json = writer(folder, ReferenceFileOut.CSL_JSON.file());
      waiting = writer(folder, WAITING);
      items = new CslWriter.Items(json);
    } catch (IOException unwritten) {
      ris.close();
      throw unwritten;
    }
  }

  private static Writer writer(Path folder, String file) throws IOException {
    return new BufferedWriter(
        new OutputStreamWriter(OwnerOnly.newFile(folder.resolve(file)), StandardCharsets.UTF_8));
  }

  @Override
  public void opens(int number) {
    file = number;
  }

  /** Writes the table of proposals. */
  static void proposals(ReferenceProposals proposals, Path folder) throws IOException {
    try (Writer table = writer(folder, ReferenceFileOut.PROPOSALS.file())) {
      ProposalsCsv.write(proposals, table);
    }
  }

  /**
   * @throws UncheckedIOException when it cannot be written
   */
  @Override
  public void took(RecordKey key, ReadRecord record) {
    if (record instanceof ReadRecord.Read read) {
      Reference named = read.reference().under(key.label());
      try {
        RisWriter.write(List.of(named), ris);
        items.add(named);
        files.get(file).spool(waiting, record);
      } catch (IOException unwritten) {
        throw new UncheckedIOException("references could not be written", unwritten);
      }
    }
    records++;
    if (records % STEP == 0) {
      progress.accept(new ReferenceState.Reading(records));
    }
  }

  @Override
  public void comparing(int references) {
    progress.accept(new ReferenceState.Comparing(references));
  }

  @Override
  public void close() throws IOException {
    try (ris;
        json;
        waiting) {
      items.close();
    }
  }
}
