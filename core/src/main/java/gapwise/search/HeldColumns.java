package gapwise.search;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.lucene.index.IndexReader;
import org.apache.lucene.index.LeafReader;

/**
 * The columns of the segments that are searched, each read at its first search and let go of with
 * its segment. States of one index share segments, so they share one of these. Safe for use by many
 * threads.
 */
final class HeldColumns {
  private final Map<IndexReader.CacheKey, SegmentColumns> held = new ConcurrentHashMap<>();

  /** The columns of a segment. */
  SegmentColumns of(LeafReader segment) throws IOException {
    Optional<IndexReader.CacheHelper> core = Optional.ofNullable(segment.getCoreCacheHelper());
    if (core.isEmpty()) {
      return SegmentColumns.read(segment);
    }
    SegmentColumns known = held.get(core.get().getKey());
    return known == null ? read(segment, core.get()) : known;
  }

  private SegmentColumns read(LeafReader segment, IndexReader.CacheHelper core) throws IOException {
    try {
      return held.computeIfAbsent(
          core.getKey(),
          key -> {
            try {
              SegmentColumns columns = SegmentColumns.read(segment);
              core.addClosedListener(held::remove);
              return columns;
            } catch (IOException e) {
              throw new UncheckedIOException(e);
            }
          });
    } catch (UncheckedIOException e) {
      throw new IOException("the columns of the index cannot be read", e);
    }
  }

  /** How many segments are held. */
  int segments() {
    return held.size();
  }
}
