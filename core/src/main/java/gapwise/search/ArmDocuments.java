package gapwise.search;

import gapwise.evidence.Arm;
import gapwise.evidence.ArmDefect;
import gapwise.evidence.Authors;
import gapwise.evidence.Citation;
import gapwise.evidence.DefectLength;
import gapwise.evidence.Detail;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Study;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.ReportKind;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.TreeSet;
import org.apache.lucene.document.Document;
import org.apache.lucene.document.DoubleDocValuesField;
import org.apache.lucene.document.DoublePoint;
import org.apache.lucene.document.DoubleRange;
import org.apache.lucene.document.Field;
import org.apache.lucene.document.IntPoint;
import org.apache.lucene.document.NumericDocValuesField;
import org.apache.lucene.document.SortedDocValuesField;
import org.apache.lucene.document.SortedNumericDocValuesField;
import org.apache.lucene.document.SortedSetDocValuesField;
import org.apache.lucene.document.StringField;
import org.apache.lucene.document.TextField;
import org.apache.lucene.util.BytesRef;
import org.apache.lucene.util.NumericUtils;

/** Turns a study into the documents of its arms. */
final class ArmDocuments {
  static final String STUDY = "study";
  static final String ARM = "arm";
  static final String ARM_POSITION = "armPosition";
  static final String PATIENTS = "patients";
  static final String INVENTED = "invented";
  static final String APART = "apart";
  static final String YEAR = "year";
  static final String YEAR_ORDER = "yearOrder";
  static final String TITLE_ORDER = "titleOrder";
  static final String DEFECT_CENTRE = "defectCentre";
  static final String DEFECT_CENTRE_ORDER = "defectCentreOrder";
  static final String DEFECT_RANGE = "defectRange";
  static final String DEFECT_ONE_SIDED = "defectOneSided";
  static final String DEFECT_OF_PATIENTS = "defectOfPatients";
  static final String DEFECT_UNKNOWN = "defectUnknown";
  static final String PATIENT_LENGTHS = "patientLengths";
  static final String FOLLOW_UP = "followUp";

  /** Titles are told apart by their first letters; a sort key of the index has an upper size. */
  private static final int LONGEST_SORT_KEY = 200;

  /**
   * Further words under which people look for a method, each once: a method with many spellings
   * must not count for more than a title that names it.
   */
  private static final Map<String, String> FURTHER_WORDS_OF_METHODS = furtherWordsOfMethods();

  private ArmDocuments() {}

  private static Map<String, String> furtherWordsOfMethods() {
    Map<String, TreeSet<String>> words = new TreeMap<>();
    Method.vocabulary()
        .spellings()
        .forEach(
            (spelling, method) ->
                words
                    .computeIfAbsent(method.code(), code -> new TreeSet<>())
                    .addAll(List.of(spelling.split(" "))));
    Map<String, String> further = new TreeMap<>();
    words.forEach(
        (code, all) -> {
          String label = Method.of(code).label().toLowerCase(Locale.ROOT);
          all.removeAll(List.of(label.split("\\W+")));
          further.put(code, String.join(" ", all));
        });
    return further;
  }

  /** One document for each arm, in their order. */
  static List<Document> of(Study study) {
    List<Document> documents = new ArrayList<>();
    for (Arm arm : study.arms()) {
      Document document = new Document();
      ArmFacts facts = ArmFacts.of(study, arm);
      addIdentity(document, study, arm, documents.size());
      for (Filter filter : Filter.values()) {
        addCodes(document, filter, study, arm, facts);
      }
      study.citation().year().ifPresent(year -> addYear(document, year));
      facts.patients().ifPresent(count -> document.add(new NumericDocValuesField(PATIENTS, count)));
      if (facts.defect().filter(ArmDocuments::isKnown).isEmpty()) {
        document.add(new StringField(DEFECT_UNKNOWN, "yes", Field.Store.NO));
      }
      facts
          .defect()
          .ifPresent(
              defect -> {
                addDefect(document, defect);
                addLengthsOfPatients(document, defect.countedByPatients(arm.baseline().patients()));
              });
      facts
          .followUpMonths()
          .ifPresent(months -> document.add(new DoublePoint(FOLLOW_UP, unsignedZero(months))));
      addWords(document, study, arm, facts);
      documents.add(document);
    }
    return documents;
  }

  private static void addIdentity(Document document, Study study, Arm arm, int position) {
    document.add(new StringField(STUDY, study.id(), Field.Store.NO));
    document.add(new SortedDocValuesField(STUDY, new BytesRef(study.id())));
    document.add(new SortedDocValuesField(ARM, new BytesRef(arm.id())));
    document.add(new NumericDocValuesField(ARM_POSITION, position));
    apart(study, arm)
        .ifPresent(why -> document.add(new SortedDocValuesField(APART, new BytesRef(why))));
    if (study.invented()) {
      document.add(new StringField(INVENTED, "yes", Field.Store.NO));
    }
    String title = study.citation().title().strip().toLowerCase(Locale.ROOT);
    String key = title.substring(0, Math.min(title.length(), LONGEST_SORT_KEY));
    document.add(new SortedDocValuesField(TITLE_ORDER, new BytesRef(key)));
  }

  /** Why an arm is never pooled, whatever is asked, in words; empty for most. */
  private static Optional<String> apart(Study study, Arm arm) {
    return study.reportKind() == ReportKind.RETRACTION
        ? Optional.of(ReportKind.RETRACTION.label())
        : arm.keptApart().map(kept -> kept.reason().label());
  }

  private static void addCodes(
      Document document, Filter filter, Study study, Arm arm, ArmFacts facts) {
    for (String code : new TreeSet<>(filter.of(study, arm, facts))) {
      String term = Filter.term(code);
      document.add(new StringField(filter.field(), term, Field.Store.NO));
      document.add(new SortedSetDocValuesField(filter.field(), new BytesRef(term)));
    }
  }

  private static void addYear(Document document, int year) {
    document.add(new IntPoint(YEAR, year));
    document.add(new NumericDocValuesField(YEAR_ORDER, year));
  }

  /** Whether anything is said of where a missing length lies. */
  private static boolean isKnown(ArmDefect defect) {
    return defect.origin() == ArmDefect.Origin.FROM_PATIENTS
        || defect.length().closedRange().isPresent()
        || defect.length().oneSidedRange().isPresent();
  }

  /**
   * An arm known by its patients alone lies in a range when any of them does, so their lengths are
   * points of their own; the stretch from the shortest to the longest would also catch the gaps. A
   * stretch with an end left open is kept apart, since it is no evidence for lengths inside it.
   */
  private static void addDefect(Document document, ArmDefect defect) {
    DefectLength length = defect.length();
    if (defect.origin() == ArmDefect.Origin.FROM_PATIENTS || length.closedRange().isEmpty()) {
      defect
          .patientsCentimetres()
          .forEach(one -> document.add(new DoublePoint(DEFECT_OF_PATIENTS, one)));
    }
    if (defect.origin() != ArmDefect.Origin.FROM_PATIENTS) {
      length.closedRange().ifPresent(range -> addRange(document, DEFECT_RANGE, range));
      length.oneSidedRange().ifPresent(range -> addRange(document, DEFECT_ONE_SIDED, range));
    }
    OptionalDouble centre = length.centreCentimetres();
    if (centre.isPresent()) {
      document.add(new DoublePoint(DEFECT_CENTRE, unsignedZero(centre.getAsDouble())));
      document.add(new DoubleDocValuesField(DEFECT_CENTRE_ORDER, centre.getAsDouble()));
    }
  }

  private static void addRange(Document document, String field, LengthRange range) {
    document.add(new DoubleRange(field, low(range), high(range)));
  }

  /** Lengths of the patients of an arm that is counted by them. */
  private static void addLengthsOfPatients(Document document, List<Double> lengths) {
    for (double length : lengths) {
      document.add(
          new SortedNumericDocValuesField(
              PATIENT_LENGTHS, NumericUtils.doubleToSortableLong(length)));
    }
  }

  static double[] low(LengthRange range) {
    return new double[] {unsignedZero(range.fromCentimetres())};
  }

  static double[] high(LengthRange range) {
    return new double[] {unsignedZero(range.toCentimetres())};
  }

  /** The index orders minus zero before zero, arithmetic does not. */
  static double unsignedZero(double value) {
    return value + 0.0;
  }

  private static void addWords(Document document, Study study, Arm arm, ArmFacts facts) {
    Citation citation = study.citation();
    List<String> names = new ArrayList<>(List.of(study.id(), citation.label()));
    citation.authors().map(Authors::text).ifPresent(names::add);
    citation.journal().ifPresent(names::add);
    citation.doi().ifPresent(names::add);
    citation.pmid().ifPresent(names::add);
    citation.register().ifPresent(names::add);
    names.addAll(citation.otherSpellings());
    names.addAll(study.centres());
    study.country().ifPresent(names::add);
    add(document, "title", List.of(citation.title()));
    add(document, "names", names);
    add(document, "method", methodWords(arm));
    add(document, "words", otherWords(study, arm, facts));
  }

  private static List<String> methodWords(Arm arm) {
    List<String> words = new ArrayList<>();
    Method method = arm.method().principal();
    words.add(method.label());
    words.add(FURTHER_WORDS_OF_METHODS.getOrDefault(method.code(), ""));
    arm.method().parts().forEach(part -> words.add(part.label()));
    arm.method().words().ifPresent(words::add);
    arm.label().ifPresent(words::add);
    arm.details().values().stream().map(Detail::words).forEach(words::add);
    return words;
  }

  private static List<String> otherWords(Study study, Arm arm, ArmFacts facts) {
    List<String> words = new ArrayList<>();
    study.design().map(Coded::label).ifPresent(words::add);
    study.designWords().ifPresent(words::add);
    study.unionDefinition().ifPresent(words::add);
    study.infectionDefinition().ifPresent(words::add);
    study.setting().ifPresent(words::add);
    study.note().ifPresent(words::add);
    facts.bones().stream().sorted().map(Coded::label).forEach(words::add);
    arm.baseline().boneWords().ifPresent(words::add);
    arm.baseline().characteristics().values().stream().map(Detail::words).forEach(words::add);
    facts.defect().flatMap(defect -> defect.length().words()).ifPresent(words::add);
    arm.note().ifPresent(words::add);
    for (OutcomeReport report : study.outcomes()) {
      if (report.scope().armIds().isEmpty() || report.scope().armIds().contains(arm.id())) {
        addReport(words, report);
      }
    }
    return words;
  }

  private static void addReport(List<String> words, OutcomeReport report) {
    words.add(report.outcome().label());
    report.definition().ifPresent(words::add);
    report.subgroup().ifPresent(subgroup -> words.add(subgroup.words()));
    report.provenance().words().ifPresent(words::add);
    report.note().ifPresent(words::add);
    if (report.value() instanceof ReportedValue.Statement statement) {
      words.add(statement.words());
    }
  }

  private static void add(Document document, String field, List<String> texts) {
    for (String text : texts) {
      document.add(new TextField(field, text, Field.Store.NO));
      document.add(new TextField(Wording.SPELLINGS, text, Field.Store.NO));
    }
  }
}
