package gapwise.search;

import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.YesOrNo;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.LeafReader;
import org.apache.lucene.index.NumericDocValues;
import org.apache.lucene.index.PostingsEnum;
import org.apache.lucene.index.SortedDocValues;
import org.apache.lucene.index.SortedNumericDocValues;
import org.apache.lucene.index.Term;
import org.apache.lucene.util.FixedBitSet;
import org.apache.lucene.util.NumericUtils;

/**
 * What is counted of the arms of one segment of the index, read once into plain arrays of some
 * hundred bytes an arm, for each search counts every arm it finds beside every filter. A segment
 * never changes, so neither does this. Safe for use by many threads.
 */
final class SegmentColumns {
  /** What stands in the index at an arm of whose missing length nothing is said. */
  static final Term LENGTH_UNKNOWN = new Term(ArmDocuments.DEFECT_UNKNOWN, "yes");

  private static final int NONE = -1;

  private final List<SegmentCodes> filters;
  private final Words studies;
  private final Words apart;
  private final int[] patients;
  private final double[] centres;
  private final int[] lengthsFrom;
  private final double[] lengths;
  private final FixedBitSet lengthUnknown;
  private final List<Optional<Design>> designs;
  private final List<Optional<YesOrNo>> infected;

  /** A text of each arm, many of which have the same; a place below 0 for none. */
  private record Words(int[] places, List<Optional<String>> words) {
    static Words read(LeafReader reader, String field) throws IOException {
      SortedDocValues values = DocValues.getSorted(reader, field);
      int[] places = new int[reader.maxDoc()];
      for (int document = 0; document < places.length; document++) {
        places[document] = values.advanceExact(document) ? values.ordValue() : NONE;
      }
      List<Optional<String>> words = new ArrayList<>();
      for (int place = 0; place < values.getValueCount(); place++) {
        words.add(Optional.of(values.lookupOrd(place).utf8ToString()));
      }
      return new Words(places, List.copyOf(words));
    }

    Optional<String> of(int document) {
      return places[document] == NONE ? Optional.empty() : words.get(places[document]);
    }
  }

  private SegmentColumns(LeafReader reader) throws IOException {
    List<SegmentCodes> codes = new ArrayList<>();
    for (Filter filter : Filter.values()) {
      codes.add(SegmentCodes.read(reader, filter));
    }
    filters = List.copyOf(codes);
    studies = Words.read(reader, ArmDocuments.STUDY);
    apart = Words.read(reader, ArmDocuments.APART);
    patients = patients(reader);
    centres = centres(reader);
    lengthsFrom = new int[reader.maxDoc() + 1];
    lengths = lengths(reader, lengthsFrom);
    lengthUnknown = lengthUnknown(reader);
    designs = coded(Filter.DESIGNS, Design.class);
    infected = coded(Filter.INFECTED, YesOrNo.class);
  }

  /** Reads a segment. */
  static SegmentColumns read(LeafReader reader) throws IOException {
    return new SegmentColumns(reader);
  }

  private static int[] patients(LeafReader reader) throws IOException {
    NumericDocValues values = DocValues.getNumeric(reader, ArmDocuments.PATIENTS);
    int[] patients = new int[reader.maxDoc()];
    for (int document = 0; document < patients.length; document++) {
      patients[document] =
          values.advanceExact(document) ? Math.toIntExact(values.longValue()) : NONE;
    }
    return patients;
  }

  private static double[] centres(LeafReader reader) throws IOException {
    NumericDocValues values = DocValues.getNumeric(reader, ArmDocuments.DEFECT_CENTRE_ORDER);
    double[] centres = new double[reader.maxDoc()];
    for (int document = 0; document < centres.length; document++) {
      centres[document] =
          values.advanceExact(document) ? Double.longBitsToDouble(values.longValue()) : Double.NaN;
    }
    return centres;
  }

  /**
   * @param from takes where the lengths of each arm begin
   */
  private static double[] lengths(LeafReader reader, int[] from) throws IOException {
    SortedNumericDocValues values =
        DocValues.getSortedNumeric(reader, ArmDocuments.PATIENT_LENGTHS);
    double[] all = new double[0];
    int read = 0;
    for (int document = 0; document + 1 < from.length; document++) {
      int count = values.advanceExact(document) ? values.docValueCount() : 0;
      if (read + count > all.length) {
        all = Arrays.copyOf(all, 2 * (read + count));
      }
      for (int i = 0; i < count; i++) {
        all[read++] = NumericUtils.sortableLongToDouble(values.nextValue());
      }
      from[document + 1] = read;
    }
    return Arrays.copyOf(all, read);
  }

  private static FixedBitSet lengthUnknown(LeafReader reader) throws IOException {
    FixedBitSet unknown = new FixedBitSet(Math.max(1, reader.maxDoc()));
    Optional<PostingsEnum> arms =
        Optional.ofNullable(reader.postings(LENGTH_UNKNOWN, PostingsEnum.NONE));
    if (arms.isPresent()) {
      unknown.or(arms.get());
    }
    return unknown;
  }

  private <T extends Enum<T> & Coded> List<Optional<T>> coded(Filter filter, Class<T> words) {
    return of(filter).codes().stream().map(code -> Coded.parse(words, code)).toList();
  }

  /** The codes of a filter. */
  SegmentCodes of(Filter filter) {
    return filters.get(filter.ordinal());
  }

  /** Whether nothing is said of the missing length of an arm. */
  boolean isLengthUnknown(int document) {
    return lengthUnknown.get(document);
  }

  /** The place of the study of an arm in the segment. */
  int study(int document) {
    return studies.places()[document];
  }

  /**
   * Patients who are meant: those of the arm; of an arm that is counted by its patients, those with
   * the length asked for; empty where it is unknown how many there are.
   */
  OptionalInt patients(int document, Optional<LengthRange> asked) {
    if (asked.isPresent() && lengthsFrom[document] < lengthsFrom[document + 1]) {
      int inside = 0;
      for (int i = lengthsFrom[document]; i < lengthsFrom[document + 1]; i++) {
        inside += asked.get().contains(lengths[i]) ? 1 : 0;
      }
      return OptionalInt.of(inside);
    }
    return patients[document] == NONE ? OptionalInt.empty() : OptionalInt.of(patients[document]);
  }

  /**
   * An arm as a visitor is told of it.
   *
   * @param meant its patients who are meant
   */
  IndexedArm arm(int document, OptionalInt meant) throws IOException {
    int method = first(Filter.METHODS, document);
    int design = first(Filter.DESIGNS, document);
    int answer = first(Filter.INFECTED, document);
    if (method == NONE) {
      throw new IOException("an arm of the index has no method");
    }
    return new IndexedArm(
        studies.of(document).orElseThrow(() -> new IOException("an arm of the index has no study")),
        of(Filter.METHODS).codes().get(method),
        design == NONE ? Optional.empty() : designs.get(design),
        answer == NONE ? Optional.empty() : infected.get(answer),
        Double.isNaN(centres[document])
            ? OptionalDouble.empty()
            : OptionalDouble.of(centres[document]),
        meant,
        apart.of(document));
  }

  /** The place of the first code of an arm; below 0 where it has none. */
  private int first(Filter filter, int document) {
    SegmentCodes codes = of(filter);
    int from = codes.from(document);
    return from == codes.from(document + 1) ? NONE : codes.at(from);
  }
}
