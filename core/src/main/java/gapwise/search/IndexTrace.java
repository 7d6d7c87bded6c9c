package gapwise.search;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.lucene.index.SegmentInfos;
import org.apache.lucene.store.Directory;
import org.apache.lucene.store.FSDirectory;

/** What a folder of an index tells of the records it was made from, read without opening it. */
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
}
