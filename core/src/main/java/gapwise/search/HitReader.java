package gapwise.search;

import gapwise.search.SearchAnswer.ArmHit;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.IndexReader;
import org.apache.lucene.index.LeafReader;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.SortedDocValues;
import org.apache.lucene.search.ScoreDoc;

/**
 * Reads which arms the documents found are. They are read in the order in which the index holds
 * them, which it can only read forwards, and given back in the order found.
 */
final class HitReader {
  private static final int PLACE_BITS = 32;

  private final List<LeafReaderContext> segments;
  private int next;
  private int base;
  private int end;
  private SortedDocValues studies = DocValues.emptySorted();
  private SortedDocValues arms = DocValues.emptySorted();

  private HitReader(IndexReader reader) {
    this.segments = reader.leaves();
  }

  /**
   * The arms from one place of the list to its end.
   *
   * @param offset the first place, 0 or more
   */
  static List<ArmHit> read(IndexReader reader, List<ScoreDoc> found, int offset)
      throws IOException {
    long[] forwards =
        IntStream.range(offset, Math.max(offset, found.size()))
            .mapToLong(place -> (long) found.get(place).doc << PLACE_BITS | place)
            .sorted()
            .toArray();
    ArmHit[] hits = new ArmHit[forwards.length];
    HitReader hit = new HitReader(reader);
    for (long documentAndPlace : forwards) {
      hits[(int) documentAndPlace - offset] = hit.at((int) (documentAndPlace >> PLACE_BITS));
    }
    return Arrays.asList(hits);
  }

  private ArmHit at(int document) throws IOException {
    while (document >= end) {
      enter(segments.get(next++));
    }
    return new ArmHit(
        text(studies, document, ArmDocuments.STUDY), text(arms, document, ArmDocuments.ARM));
  }

  private void enter(LeafReaderContext segment) throws IOException {
    LeafReader reader = segment.reader();
    base = segment.docBase;
    end = base + reader.maxDoc();
    studies = DocValues.getSorted(reader, ArmDocuments.STUDY);
    arms = DocValues.getSorted(reader, ArmDocuments.ARM);
  }

  private String text(SortedDocValues values, int document, String field) throws IOException {
    if (!values.advanceExact(document - base)) {
      throw new IOException("an arm of the index has no " + field);
    }
    return values.lookupOrd(values.ordValue()).utf8ToString();
  }
}
