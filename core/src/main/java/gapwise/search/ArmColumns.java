package gapwise.search;

import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.YesOrNo;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.NumericDocValues;
import org.apache.lucene.index.SortedDocValues;
import org.apache.lucene.index.SortedNumericDocValues;
import org.apache.lucene.util.NumericUtils;

/**
 * The arms of one segment as they are counted and as a visitor is told of them, from columns of the
 * index alone.
 */
final class ArmColumns {
  private final SortedDocValues studies;
  private final SortedDocValues apart;
  private final NumericDocValues centres;
  private final NumericDocValues patients;
  private final SortedNumericDocValues lengths;
  private final Optional<LengthRange> asked;
  private final FilterColumn methods;
  private final FilterColumn designs;
  private final FilterColumn infected;
  private final List<String> methodCodes;
  private final List<Optional<Design>> designWords;
  private final List<Optional<YesOrNo>> infectedWords;
  private int study = -1;
  private boolean newStudy;
  private OptionalInt patientsOfArm = OptionalInt.empty();
  private int namedStudy = -1;
  private String studyId = "";

  /**
   * @param columns of the filters, by the places of the filters
   * @param asked missing length of the patients who are meant; empty where all are
   */
  ArmColumns(LeafReaderContext context, List<FilterColumn> columns, Optional<LengthRange> asked)
      throws IOException {
    studies = DocValues.getSorted(context.reader(), ArmDocuments.STUDY);
    apart = DocValues.getSorted(context.reader(), ArmDocuments.APART);
    centres = DocValues.getNumeric(context.reader(), ArmDocuments.DEFECT_CENTRE_ORDER);
    patients = DocValues.getNumeric(context.reader(), ArmDocuments.PATIENTS);
    lengths = DocValues.getSortedNumeric(context.reader(), ArmDocuments.PATIENT_LENGTHS);
    this.asked = asked;
    methods = columns.get(Filter.METHODS.ordinal());
    designs = columns.get(Filter.DESIGNS.ordinal());
    infected = columns.get(Filter.INFECTED.ordinal());
    methodCodes = methods.codes();
    designWords = designs.codes().stream().map(c -> Coded.parse(Design.class, c)).toList();
    infectedWords = infected.codes().stream().map(c -> Coded.parse(YesOrNo.class, c)).toList();
  }

  /** Reads the study and the patients of an arm. */
  void load(int document) throws IOException {
    int own = study(document);
    newStudy = own != study;
    study = own;
    patientsOfArm = patientsMeant(document);
  }

  /** The place of the study of an arm in the segment. */
  int study(int document) throws IOException {
    if (!studies.advanceExact(document)) {
      throw new IOException("an arm of the index has no study");
    }
    return studies.ordValue();
  }

  /**
   * Those of the arm; of an arm that is counted by its patients, those with the length asked for.
   */
  private OptionalInt patientsMeant(int document) throws IOException {
    if (asked.isPresent() && lengths.advanceExact(document)) {
      int inside = 0;
      for (int i = 0; i < lengths.docValueCount(); i++) {
        double length = NumericUtils.sortableLongToDouble(lengths.nextValue());
        inside += asked.get().contains(length) ? 1 : 0;
      }
      return OptionalInt.of(inside);
    }
    return patients.advanceExact(document)
        ? OptionalInt.of(Math.toIntExact(patients.longValue()))
        : OptionalInt.empty();
  }

  /** Whether the arm last read is of another study than the one before. */
  boolean startsStudy() {
    return newStudy;
  }

  /** Patients of the arm last read who are meant. */
  OptionalInt patients() {
    return patientsOfArm;
  }

  /** The arm last read, which the columns of the filters must have read last too. */
  IndexedArm arm(int document) throws IOException {
    if (!methods.holdsAny()) {
      throw new IOException("an arm of the index has no method");
    }
    return new IndexedArm(
        studyId(),
        methodCodes.get(methods.first()),
        designs.holdsAny() ? designWords.get(designs.first()) : Optional.empty(),
        infected.holdsAny() ? infectedWords.get(infected.first()) : Optional.empty(),
        centres.advanceExact(document)
            ? OptionalDouble.of(Double.longBitsToDouble(centres.longValue()))
            : OptionalDouble.empty(),
        patientsOfArm,
        apart.advanceExact(document)
            ? Optional.of(apart.lookupOrd(apart.ordValue()).utf8ToString())
            : Optional.empty());
  }

  /** The arms of a study stand side by side, so its name is read once. */
  private String studyId() throws IOException {
    if (namedStudy != study) {
      namedStudy = study;
      studyId = studies.lookupOrd(study).utf8ToString();
    }
    return studyId;
  }
}
