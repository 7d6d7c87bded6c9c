package gapwise.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import org.apache.lucene.index.DirectoryReader;
import org.apache.lucene.index.IndexWriter;
import org.apache.lucene.index.IndexWriterConfig;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.NoMergePolicy;
import org.apache.lucene.store.ByteBuffersDirectory;
import org.junit.jupiter.api.Test;

class HeldColumnsTest {
  private final HeldColumns columns = new HeldColumns();
  private final InventedStudies invented = new InventedStudies(3);

  private void add(IndexWriter writer, int studies) throws IOException {
    for (int i = 0; i < studies; i++) {
      writer.addDocuments(ArmDocuments.of(invented.study(i)));
    }
    writer.commit();
  }

  private void readAll(DirectoryReader reader) throws IOException {
    for (LeafReaderContext leaf : reader.leaves()) {
      columns.of(leaf.reader());
    }
  }

  @Test
  void laterStatesShareSegmentsAndReadOnlyNewOnes() throws IOException {
    try (ByteBuffersDirectory memory = new ByteBuffersDirectory();
        IndexWriter writer =
            new IndexWriter(
                memory,
                new IndexWriterConfig(Wording.analyzer()).setMergePolicy(NoMergePolicy.INSTANCE))) {
      add(writer, 5);
      try (DirectoryReader first = DirectoryReader.open(memory)) {
        SegmentColumns known = columns.of(first.leaves().get(0).reader());
        add(writer, 4);
        try (DirectoryReader second = DirectoryReader.openIfChanged(first)) {
          readAll(second);
          assertSame(known, columns.of(second.leaves().get(0).reader()));
          assertEquals(2, columns.segments());
        }
        assertEquals(1, columns.segments());
      }
      assertEquals(0, columns.segments());
    }
  }

  @Test
  void whatWasMergedAwayIsLetGoOf() throws IOException {
    try (ByteBuffersDirectory memory = new ByteBuffersDirectory();
        IndexWriter writer = new IndexWriter(memory, new IndexWriterConfig(Wording.analyzer()))) {
      add(writer, 5);
      add(writer, 5);
      try (DirectoryReader many = DirectoryReader.open(memory)) {
        readAll(many);
        assertTrue(columns.segments() > 1, "one segment only, so that nothing is shown");
      }
      writer.forceMerge(1);
      writer.commit();
      try (DirectoryReader one = DirectoryReader.open(memory)) {
        readAll(one);
        assertEquals(1, columns.segments());
      }
    }
  }
}
