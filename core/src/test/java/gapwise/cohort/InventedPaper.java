package gapwise.cohort;

import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.BoneCount;
import gapwise.evidence.Citation;
import gapwise.evidence.DefectLength;
import gapwise.evidence.EventCount;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.PatientOutcome;
import gapwise.evidence.PatientRow;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.QuantitySummaryBuilder;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.StudyBuilder;
import gapwise.evidence.unit.Length;
import gapwise.evidence.unit.PartialDate;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.ReportKind;
import gapwise.evidence.vocabulary.Sex;
import gapwise.evidence.vocabulary.YesOrNo;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/** A paper about patients that were drawn before it: a choice among them, and how it is printed. */
final class InventedPaper {
  /** An invented patient of one hospital, treated by one method in one month. */
  record Patient(
      int month,
      int age,
      boolean male,
      boolean tibia,
      boolean infected,
      double gap,
      boolean united,
      double monthsToUnion) {

    static Patient drawn(Random random, int fromMonth, int toMonth, boolean child) {
      return new Patient(
          fromMonth + random.nextInt(toMonth - fromMonth + 1),
          child
              ? 4 + random.nextInt(11)
              : (int) Math.max(17, Math.min(78, 39 + 13 * random.nextGaussian())),
          random.nextInt(10) < 8,
          random.nextInt(10) < 7,
          random.nextInt(10) < 5,
          Math.max(2, Math.round(10 * (6 + 2.2 * random.nextGaussian())) / 10.0),
          random.nextInt(10) < 9,
          Math.max(3, Math.round(10 * (9 + 2.5 * random.nextGaussian())) / 10.0));
    }
  }

  final String id;
  final Random random;
  String title;
  List<String> authors;
  List<String> hospitals = List.of();
  String country;
  int year;
  String journal;
  ReportKind kind = ReportKind.ARTICLE;
  boolean tellsYears = true;
  boolean rows;
  boolean identified = true;
  final List<Arm> arms = new ArrayList<>();
  private final List<OutcomeReport> outcomes = new ArrayList<>();
  private final List<PatientRow> patientRows = new ArrayList<>();
  private int first = Integer.MAX_VALUE;
  private int last;

  InventedPaper(String id, Random random) {
    this.id = id;
    this.random = random;
  }

  InventedPaper treated(String method, String label, List<Patient> patients) {
    String armId = String.valueOf((char) ('A' + arms.size()));
    first = Math.min(first, patients.stream().mapToInt(Patient::month).min().orElseThrow());
    last = Math.max(last, patients.stream().mapToInt(Patient::month).max().orElseThrow());
    int n = patients.size();
    Baseline baseline =
        Baseline.with()
            .patients(n)
            .age(summary(Unit.YEARS, patients, Patient::age))
            .male(EventCount.of(count(patients, Patient::male), n))
            .infected(EventCount.of(count(patients, Patient::infected), n))
            .bones(bones(patients))
            .defect(DefectLength.of(summary(Unit.CENTIMETRES, patients, Patient::gap)))
            .followUp(
                QuantitySummary.with(Unit.MONTHS).mean(20 + random.nextInt(300) / 10.0).build())
            .build();
    arms.add(
        Arm.with(armId, MethodUsed.of(Method.of(method))).label(label).baseline(baseline).build());
    outcomes.add(
        OutcomeReport.with(
                new Scope.OneArm(armId),
                Outcome.of("union"),
                new ReportedValue.Events(EventCount.of(count(patients, Patient::united), n)))
            .build());
    if (rows) {
      patients.forEach(patient -> patientRows.add(row(armId, patient)));
    }
    return this;
  }

  private PatientRow row(String armId, Patient patient) {
    TreeMap<String, PatientOutcome> outcomes = new TreeMap<>();
    if (patient.united()) {
      outcomes.put(
          "time-to-union", new PatientOutcome.Measured(patient.monthsToUnion(), Unit.MONTHS));
    }
    return PatientRow.with("case-" + patientRows.size(), armId)
        .ageYears(patient.age())
        .sex(patient.male() ? Sex.MALE : Sex.FEMALE)
        .bone(patient.tibia() ? Bone.TIBIA : Bone.FEMUR)
        .infected(patient.infected() ? YesOrNo.YES : YesOrNo.NO)
        .defect(new Length(patient.gap() * 10, Unit.MILLIMETRES, false))
        .outcomes(outcomes)
        .build();
  }

  Study study() {
    Citation.Builder citation =
        Citation.with(title)
            .authors(String.join("; ", authors))
            .firstAuthor(authors.get(0).replaceFirst(" \\p{Lu}+$", ""))
            .year(year)
            .journal(journal)
            .volume("" + (year - 1960))
            .pages(pages());
    if (identified) {
      citation.doi("10.5555/invented." + id);
    }
    StudyBuilder study =
        Study.with(id, citation.build())
            .reportKind(kind)
            .centres(hospitals)
            .country(country + " (invented)")
            .invented(true)
            .arms(arms)
            .outcomes(outcomes)
            .patients(patientRows);
    if (tellsYears) {
      boolean months = random.nextBoolean();
      study.recruitmentFrom(date(first, months)).recruitmentTo(date(last, months));
    }
    return study.build();
  }

  private String pages() {
    int first = 1 + random.nextInt(1900);
    return first + "-" + (first + 3 + random.nextInt(12));
  }

  /** The same words a second time under another id, as another search may bring them. */
  static Study copied(Study study, String id, String title, boolean initialsLost) {
    Citation print = study.citation();
    String authors =
        print
            .authors()
            .orElseThrow()
            .text()
            .replace("ø", "oe")
            .replace("ö", "oe")
            .replace("ü", "ue");
    Citation.Builder citation =
        Citation.with(title)
            .authors(initialsLost ? authors.replaceAll("( \\p{Lu})\\p{Lu}", "$1") : authors)
            .firstAuthor(authors.split(";")[0].replaceFirst(" \\p{Lu}+$", ""))
            .year(print.year().orElseThrow())
            .journal(print.journal().orElseThrow())
            .volume(print.volume().orElseThrow())
            .pages(print.pages().orElseThrow());
    Study copy = study.but().build();
    return Study.with(id, citation.build())
        .reportKind(copy.reportKind())
        .centres(copy.centres())
        .country(copy.country().orElseThrow())
        .arms(copy.arms())
        .outcomes(copy.outcomes())
        .patients(copy.patients())
        .invented(true)
        .build();
  }

  private static PartialDate date(int month, boolean months) {
    return new PartialDate(
        month / 12, months ? OptionalInt.of(1 + month % 12) : OptionalInt.empty());
  }

  private static int count(List<Patient> patients, Predicate<Patient> which) {
    return (int) patients.stream().filter(which).count();
  }

  private static List<BoneCount> bones(List<Patient> patients) {
    int tibias = count(patients, Patient::tibia);
    List<BoneCount> bones = new ArrayList<>();
    if (tibias > 0) {
      bones.add(new BoneCount(Bone.TIBIA, OptionalInt.of(tibias)));
    }
    if (tibias < patients.size()) {
      bones.add(new BoneCount(Bone.FEMUR, OptionalInt.of(patients.size() - tibias)));
    }
    return bones;
  }

  private QuantitySummary summary(
      Unit unit, List<Patient> patients, ToDoubleFunction<Patient> value) {
    double[] sorted = patients.stream().mapToDouble(value).sorted().toArray();
    double mean =
        IntStream.range(0, sorted.length).mapToDouble(i -> sorted[i]).average().orElseThrow();
    double squares =
        IntStream.range(0, sorted.length)
            .mapToDouble(i -> (sorted[i] - mean) * (sorted[i] - mean))
            .sum();
    QuantitySummaryBuilder summary = QuantitySummary.with(unit).mean(Math.round(10 * mean) / 10.0);
    if (random.nextInt(3) > 0) {
      summary.standardDeviation(
          Math.round(10 * Math.sqrt(squares / Math.max(1, sorted.length - 1))) / 10.0);
    }
    // A mean that is rounded must not pass the ends.
    if (random.nextInt(3) > 0 && sorted[0] + 0.1 < mean && mean < sorted[sorted.length - 1] - 0.1) {
      summary.minimum(sorted[0]).maximum(sorted[sorted.length - 1]);
    }
    return summary.build();
  }

  /** So many of a list, in the order of their months. */
  static List<Patient> some(List<Patient> all, int count, Random random) {
    List<Patient> mixed = new ArrayList<>(all);
    Collections.shuffle(mixed, random);
    return List.copyOf(mixed.subList(0, Math.min(count, mixed.size())));
  }
}
