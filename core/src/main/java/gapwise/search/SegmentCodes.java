package gapwise.search;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.LeafReader;
import org.apache.lucene.index.SortedSetDocValues;

/**
 * The codes of one filter in one segment of the index, arm by arm. Codes are told by their places
 * in the order of the segment.
 */
final class SegmentCodes {
  private final List<String> codes;
  private final int[] parts;
  private final List<String> partNames;

  /** Where the codes of each arm begin among all; one more than there are arms. */
  private final int[] from;

  private final int[] places;

  private SegmentCodes(Filter filter, List<String> codes, int[] from, int[] places) {
    this.codes = List.copyOf(codes);
    this.from = from;
    this.places = places;
    List<String> names = new ArrayList<>();
    parts = new int[codes.size()];
    for (int place = 0; place < parts.length; place++) {
      String part = filter.part(codes.get(place));
      if (!names.contains(part)) {
        names.add(part);
      }
      parts[place] = names.indexOf(part);
    }
    partNames = List.copyOf(names);
  }

  /** Reads those of a segment. */
  static SegmentCodes read(LeafReader reader, Filter filter) throws IOException {
    SortedSetDocValues values = DocValues.getSortedSet(reader, filter.field());
    List<String> codes = new ArrayList<>();
    for (long place = 0; place < values.getValueCount(); place++) {
      codes.add(values.lookupOrd(place).utf8ToString());
    }
    int[] from = new int[reader.maxDoc() + 1];
    int[] places = new int[reader.maxDoc()];
    int read = 0;
    for (int document = 0; document < reader.maxDoc(); document++) {
      int count = values.advanceExact(document) ? values.docValueCount() : 0;
      if (read + count > places.length) {
        places = Arrays.copyOf(places, 2 * (read + count));
      }
      for (int i = 0; i < count; i++) {
        places[read++] = Math.toIntExact(values.nextOrd());
      }
      from[document + 1] = read;
    }
    return new SegmentCodes(filter, codes, from, Arrays.copyOf(places, read));
  }

  /** All codes of the segment, by their places. */
  List<String> codes() {
    return codes;
  }

  /** The place of a code; below 0 for one that no arm of the segment has. */
  int place(String code) {
    return codes.indexOf(code);
  }

  /** The names of the parts that codes of the segment belong to, by their numbers. */
  List<String> partNames() {
    return partNames;
  }

  /** The number of the part that a code belongs to. */
  int part(int place) {
    return parts[place];
  }

  /** Where the codes of an arm begin; they end where those of the next one begin. */
  int from(int document) {
    return from[document];
  }

  /** The place of a code, from where those of an arm begin. */
  int at(int index) {
    return places[index];
  }
}
