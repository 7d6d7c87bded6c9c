package gapwise.search;

import gapwise.evidence.Study;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.function.Consumer;
import org.apache.lucene.analysis.Analyzer;
import org.apache.lucene.index.DirectoryReader;
import org.apache.lucene.index.IndexWriter;
import org.apache.lucene.index.IndexWriterConfig;
import org.apache.lucene.store.ByteBuffersDirectory;

/**
 * An index in memory alone, for a state of the evidence base that is shown no more. It holds no
 * files, so nobody need let go of it.
 */
public final class MemoryIndex {
  private MemoryIndex() {}

  /**
   * The search in an older state.
   *
   * @param studies hands every study of that state to what it is given, one at a time
   * @param change number of the last change of that state
   */
  public static SearchSnapshot of(Consumer<Consumer<Study>> studies, long change) {
    Analyzer analyzer = Wording.analyzer();
    ByteBuffersDirectory memory = new ByteBuffersDirectory();
    try {
      try (IndexWriter writer = new IndexWriter(memory, new IndexWriterConfig(analyzer))) {
        studies.accept(study -> add(writer, study));
      }
      return new SearchSnapshot(DirectoryReader.open(memory), new HeldColumns(), analyzer, change);
    } catch (IOException e) {
      throw new UncheckedIOException("An index in memory cannot be made", e);
    }
  }

  private static void add(IndexWriter writer, Study study) {
    try {
      writer.addDocuments(ArmDocuments.of(study));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
