package gapwise.search;

import gapwise.evidence.Coded;
import gapwise.evidence.Design;
import java.io.IOException;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Consumer;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.NumericDocValues;
import org.apache.lucene.index.SortedDocValues;
import org.apache.lucene.index.SortedSetDocValues;
import org.apache.lucene.search.ScoreMode;
import org.apache.lucene.search.SimpleCollector;

/** Hands every arm found to a visitor, from columns of the index alone. */
final class ArmVisit extends SimpleCollector {
  private final Consumer<IndexedArm> visitor;
  private SortedDocValues studies;
  private SortedSetDocValues methods;
  private SortedSetDocValues designs;
  private NumericDocValues centres;
  private NumericDocValues patients;
  private int lastStudy;
  private String lastStudyId;

  ArmVisit(Consumer<IndexedArm> visitor) {
    this.visitor = visitor;
  }

  @Override
  protected void doSetNextReader(LeafReaderContext context) throws IOException {
    studies = DocValues.getSorted(context.reader(), ArmDocuments.STUDY);
    methods = DocValues.getSortedSet(context.reader(), Filter.METHODS.field());
    designs = DocValues.getSortedSet(context.reader(), Filter.DESIGNS.field());
    centres = DocValues.getNumeric(context.reader(), ArmDocuments.DEFECT_CENTRE_ORDER);
    patients = DocValues.getNumeric(context.reader(), ArmDocuments.PATIENTS);
    lastStudy = -1;
    lastStudyId = "";
  }

  @Override
  public void collect(int document) throws IOException {
    visitor.accept(
        new IndexedArm(
            study(document),
            code(methods, document)
                .orElseThrow(() -> new IOException("an arm of the index has no method")),
            code(designs, document).flatMap(code -> Coded.parse(Design.class, code)),
            centres.advanceExact(document)
                ? OptionalDouble.of(Double.longBitsToDouble(centres.longValue()))
                : OptionalDouble.empty(),
            patients.advanceExact(document)
                ? OptionalInt.of(Math.toIntExact(patients.longValue()))
                : OptionalInt.empty()));
  }

  /** The arms of a study stand side by side, so its name is read once. */
  private String study(int document) throws IOException {
    if (!studies.advanceExact(document)) {
      throw new IOException("an arm of the index has no study");
    }
    if (studies.ordValue() != lastStudy) {
      lastStudy = studies.ordValue();
      lastStudyId = studies.lookupOrd(lastStudy).utf8ToString();
    }
    return lastStudyId;
  }

  private static Optional<String> code(SortedSetDocValues values, int document) throws IOException {
    return values.advanceExact(document)
        ? Optional.of(values.lookupOrd(values.nextOrd()).utf8ToString())
        : Optional.empty();
  }

  @Override
  public ScoreMode scoreMode() {
    return ScoreMode.COMPLETE_NO_SCORES;
  }
}
