package gapwise.server.job.reference;

import gapwise.curation.ReferenceBase;
import gapwise.reference.format.FileAnswer;
import gapwise.reference.format.ReferenceFile;
import gapwise.reference.format.ReferenceReader;
import gapwise.reference.format.SearchDone;
import gapwise.reference.kept.KeptLoad;
import gapwise.reference.kept.LoadedFile;
import gapwise.reference.kept.Spool;
import gapwise.store.OwnerOnly;
import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Files of references read and kept in one go, as a command does that nobody looks at meanwhile.
 */
public final class FilesKept {
  private FilesKept() {}

  /**
   * Keeps all records that are read of the files, or nothing.
   *
   * @param searches the log of their searches
   * @param spool a file that is not there yet, for the records while they wait; it is deleted
   * @throws IOException if a file cannot be read, or the spool not written
   */
  public static List<KeptLoad> keep(
      ReferenceBase base,
      List<ReferenceFile> files,
      List<SearchDone> searches,
      String who,
      Path spool)
      throws IOException {
    try {
      List<LoadedFile> loaded = new ArrayList<>();
      try (Writer waiting =
          new BufferedWriter(
              new OutputStreamWriter(OwnerOnly.newFile(spool), StandardCharsets.UTF_8))) {
        for (ReferenceFile file : files) {
          HandedFile handed = HandedFile.of(file);
          handed.loaded(read(handed, waiting)).ifPresent(loaded::add);
        }
      }
      String names = String.join(", ", loaded.stream().map(LoadedFile::file).toList());
      try (BufferedReader lines = Files.newBufferedReader(spool, StandardCharsets.UTF_8)) {
        return base.keep(Spool.read(lines), loaded, searches, who, "references of " + names);
      }
    } catch (UncheckedIOException failure) {
      throw new IOException("references could not be kept", failure);
    } finally {
      Files.deleteIfExists(spool);
    }
  }

  private static FileAnswer read(HandedFile handed, Writer waiting) throws IOException {
    return ReferenceReader.read(
        handed.file(),
        record -> {
          try {
            handed.spool(waiting, record);
          } catch (IOException unwritten) {
            throw new UncheckedIOException("records could not be written", unwritten);
          }
        });
  }
}
