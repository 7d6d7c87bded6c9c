package gapwise.search;

import gapwise.store.OwnerOnly;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.apache.lucene.analysis.Analyzer;
import org.apache.lucene.index.DirectoryReader;
import org.apache.lucene.index.IndexWriter;
import org.apache.lucene.index.IndexWriterConfig;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.store.Directory;
import org.apache.lucene.store.FSDirectory;
import org.apache.lucene.store.LockObtainFailedException;

/**
 * The folder of the index. It holds nothing that the store does not, so what is damaged is thrown
 * away.
 */
final class IndexFolder {
  /** Memory for documents not yet written; four times the library's, for whole rebuilds. */
  private static final double BUFFER_MEGABYTES = 64;

  private final Path folder;
  private final Analyzer analyzer;

  IndexFolder(Path folder, Analyzer analyzer) {
    this.folder = folder;
    this.analyzer = analyzer;
  }

  /**
   * How far a sound index of this format has come. Reads every file once, since damage that no one
   * sees at the start would show as missing studies later.
   */
  Optional<FollowedTo> soundIndex() {
    if (!Files.isDirectory(folder)) {
      return Optional.empty();
    }
    try (Directory directory = FSDirectory.open(folder);
        DirectoryReader reader = DirectoryReader.open(directory)) {
      for (LeafReaderContext leaf : reader.leaves()) {
        leaf.reader().checkIntegrity();
      }
      return FollowedTo.ofCommit(reader.getIndexCommit().getUserData());
    } catch (IOException | RuntimeException damaged) {
      return Optional.empty();
    }
  }

  /** Opens what is there, to go on with it. */
  IndexWriter append() throws IOException {
    return open(IndexWriterConfig.OpenMode.APPEND);
  }

  /** Starts from nothing in an emptied folder. */
  IndexWriter createAnew() throws IOException {
    OwnerOnly.folders(folder);
    requireUnused();
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, Files::isRegularFile)) {
      for (Path file : files) {
        if (!file.getFileName().toString().equals(IndexWriter.WRITE_LOCK_NAME)) {
          Files.delete(file);
        }
      }
    }
    return open(IndexWriterConfig.OpenMode.CREATE);
  }

  private void requireUnused() throws IOException {
    try (Directory directory = OwnerOnlyDirectory.of(folder)) {
      directory.obtainLock(IndexWriter.WRITE_LOCK_NAME).close();
    } catch (LockObtainFailedException used) {
      throw inUse(used);
    }
  }

  private IndexWriter open(IndexWriterConfig.OpenMode mode) throws IOException {
    Directory directory = OwnerOnlyDirectory.of(folder);
    try {
      return new IndexWriter(
          directory,
          new IndexWriterConfig(analyzer)
              .setOpenMode(mode)
              .setRAMBufferSizeMB(BUFFER_MEGABYTES)
              .setCommitOnClose(false));
    } catch (LockObtainFailedException used) {
      directory.close();
      throw inUse(used);
    } catch (IOException | RuntimeException failure) {
      directory.close();
      throw failure;
    }
  }

  private UncheckedIOException inUse(LockObtainFailedException used) {
    return new UncheckedIOException(
        "The search index in "
            + folder
            + " is in use by another running copy of the program. Stop that copy first.",
        used);
  }
}
