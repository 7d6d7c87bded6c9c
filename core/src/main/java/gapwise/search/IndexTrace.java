package gapwise.search;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.lucene.index.IndexWriter;
import org.apache.lucene.index.SegmentInfos;
import org.apache.lucene.store.Directory;
import org.apache.lucene.store.FSDirectory;
import org.apache.lucene.store.LockObtainFailedException;

/** What a folder of an index tells of the records it was made from, and whether it is in use. */
public final class IndexTrace {
  private IndexTrace() {}

  /** Number of the last change that went into the index; 0 when there is none or it cannot say. */
  public static long lastChange(Path folder) {
    if (!Files.isDirectory(folder)) {
      return 0;
    }
    try (Directory directory = FSDirectory.open(folder)) {
      return FollowedTo.ofCommit(SegmentInfos.readLatestCommit(directory).getUserData())
          .map(FollowedTo::change)
          .orElse(0L);
    } catch (IOException | RuntimeException unreadable) {
      return 0;
    }
  }

  /** Whether a process, this one or another, follows the records with the index in this folder. */
  public static boolean isInUse(Path folder) {
    if (!Files.isDirectory(folder)) {
      return false;
    }
    try (Directory directory = OwnerOnlyDirectory.of(folder)) {
      directory.obtainLock(IndexWriter.WRITE_LOCK_NAME).close();
      return false;
    } catch (LockObtainFailedException used) {
      return true;
    } catch (IOException unusable) {
      return false;
    }
  }

  /**
   * Throws an index away, so that whoever opens it next builds it anew from the records.
   *
   * @throws UncheckedIOException when it cannot be deleted
   */
  public static void discard(Path folder) {
    if (!Files.isDirectory(folder)) {
      return;
    }
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, Files::isRegularFile)) {
      for (Path file : files) {
        if (!file.getFileName().toString().equals(IndexWriter.WRITE_LOCK_NAME)) {
          Files.delete(file);
        }
      }
    } catch (IOException undeleted) {
      throw new UncheckedIOException("The search index cannot be thrown away", undeleted);
    }
  }
}
