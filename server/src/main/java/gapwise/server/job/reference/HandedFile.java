package gapwise.server.job.reference;

import gapwise.reference.format.FileAnswer;
import gapwise.reference.format.Format;
import gapwise.reference.format.ReadRecord;
import gapwise.reference.format.ReferenceFile;
import gapwise.reference.format.ReferenceReader;
import gapwise.reference.kept.LoadedFile;
import gapwise.reference.kept.Spool;
import java.io.IOException;
import java.io.Writer;
import java.util.Optional;

/**
 * A file of a load, known before it is read.
 *
 * @param file the file
 * @param load its key
 * @param format its format, if it is one that is read
 */
record HandedFile(ReferenceFile file, String load, Optional<Format> format) {
  static HandedFile of(ReferenceFile file) throws IOException {
    return new HandedFile(file, LoadedFile.key(file), ReferenceReader.format(file));
  }

  /** Writes a record as it waits to be kept. */
  void spool(Writer waiting, ReadRecord record) throws IOException {
    if (format.isPresent()) {
      Spool.add(waiting, load, file.name(), format.get(), record);
    }
  }

  /** The file as it is kept; empty where nothing of it was read. */
  Optional<LoadedFile> loaded(FileAnswer answer) {
    return answer.format().isPresent() && answer.read() > 0
        ? Optional.of(LoadedFile.of(load, answer))
        : Optional.empty();
  }
}
