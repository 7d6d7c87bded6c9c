package gapwise.search;

import gapwise.evidence.Answer;
import gapwise.evidence.Coded;
import gapwise.evidence.Design;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
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
  private SortedSetDocValues infected;
  private final List<String> methodCodes = new ArrayList<>();
  private final List<Optional<Design>> designWords = new ArrayList<>();
  private final List<Optional<Answer>> infectedWords = new ArrayList<>();
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
    infected = DocValues.getSortedSet(context.reader(), Filter.INFECTED.field());
    centres = DocValues.getNumeric(context.reader(), ArmDocuments.DEFECT_CENTRE_ORDER);
    patients = DocValues.getNumeric(context.reader(), ArmDocuments.PATIENTS);
    lastStudy = -1;
    lastStudyId = "";
    methodCodes.clear();
    codes(methods, methodCodes::add);
    designWords.clear();
    codes(designs, code -> designWords.add(Coded.parse(Design.class, code)));
    infectedWords.clear();
    codes(infected, code -> infectedWords.add(Coded.parse(Answer.class, code)));
  }

  /** A segment holds few different codes, so each is read once and not with every arm. */
  private static void codes(SortedSetDocValues values, Consumer<String> take) throws IOException {
    for (long place = 0; place < values.getValueCount(); place++) {
      take.accept(values.lookupOrd(place).utf8ToString());
    }
  }

  @Override
  public void collect(int document) throws IOException {
    visitor.accept(
        new IndexedArm(
            study(document),
            method(document),
            word(designs, designWords, document),
            word(infected, infectedWords, document),
            centres.advanceExact(document)
                ? OptionalDouble.of(Double.longBitsToDouble(centres.longValue()))
                : OptionalDouble.empty(),
            patients.advanceExact(document)
                ? OptionalInt.of(Math.toIntExact(patients.longValue()))
                : OptionalInt.empty()));
  }

  private static <T> Optional<T> word(
      SortedSetDocValues values, List<Optional<T>> words, int document) throws IOException {
    return values.advanceExact(document) ? words.get((int) values.nextOrd()) : Optional.empty();
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

  private String method(int document) throws IOException {
    if (!methods.advanceExact(document)) {
      throw new IOException("an arm of the index has no method");
    }
    return methodCodes.get((int) methods.nextOrd());
  }

  @Override
  public ScoreMode scoreMode() {
    return ScoreMode.COMPLETE_NO_SCORES;
  }
}
