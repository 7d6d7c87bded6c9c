package gapwise.search;

import gapwise.evidence.Appraisal;
import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.BoneCount;
import gapwise.evidence.Citation;
import gapwise.evidence.DefectLength;
import gapwise.evidence.Detail;
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
import gapwise.evidence.unit.Duration;
import gapwise.evidence.unit.Length;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.DetailKind;
import gapwise.evidence.vocabulary.Instrument;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.YesOrNo;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;

/** Studies drawn at random from a seed; all invented, to hold the index against. */
final class InventedStudies {
  private static final String[] TITLE_WORDS = {
    "transport", "membrane", "femoral", "tibial", "infected", "defects", "scaffolds", "series"
  };
  private static final String[] OUTCOMES = {"union", "refracture", "death", "time-to-union"};
  static final List<String> DETAILS =
      List.of("fixation", "internal-fixation-beside-frame", "transport-levels");

  private final Random random;

  /** Of its own, so that details leave everything else as it is. */
  private final Random ofDetails;

  InventedStudies(long seed) {
    random = new Random(seed);
    ofDetails = new Random(seed + 1);
  }

  Study study(int number) {
    String id = "invented-" + number;
    Citation.Builder citation =
        Citation.with("Invented " + pick(TITLE_WORDS) + " of " + pick(TITLE_WORDS));
    if (random.nextInt(8) > 0) {
      citation.year(1990 + random.nextInt(8));
    }
    List<Arm> arms = new ArrayList<>();
    List<PatientRow> patients = new ArrayList<>();
    List<OutcomeReport> outcomes = new ArrayList<>();
    int armCount = 1 + random.nextInt(3);
    for (int i = 0; i < armCount; i++) {
      String arm = String.valueOf((char) ('C' - i));
      arms.add(
          Arm.with(arm, MethodUsed.of(method())).baseline(baseline()).details(details()).build());
      addPatients(patients, arm);
      addOutcome(outcomes, new Scope.OneArm(arm));
    }
    if (random.nextInt(6) == 0) {
      addOutcome(outcomes, new Scope.AllArms());
    }
    StudyBuilder study = Study.with(id, citation.build()).arms(arms).patients(patients);
    if (random.nextInt(5) > 0) {
      study.design(Design.values()[random.nextInt(4)]);
    }
    if (random.nextInt(3) == 0) {
      study.whole(baseline());
    }
    study.appraisals(appraisals());
    return study.outcomes(outcomes).invented(true).build();
  }

  private List<Appraisal> appraisals() {
    Instrument by = Instrument.of("minors");
    if (ofDetails.nextInt(3) == 0) {
      return List.of();
    }
    String risk = by.overall().get(ofDetails.nextInt(by.overall().size())).code();
    return List.of(
        new Appraisal(
            by,
            by.version(),
            Optional.empty(),
            Optional.empty(),
            List.of(),
            Optional.of(new Appraisal.Overall(risk, Optional.empty(), Optional.empty())),
            List.of(),
            Optional.empty()));
  }

  private SortedMap<String, Detail> details() {
    SortedMap<String, Detail> details = new TreeMap<>();
    for (String kind : DETAILS) {
      if (ofDetails.nextInt(3) > 0) {
        List<String> words = DetailKind.ofMethods().find(kind).orElseThrow().values();
        details.put(kind, new Detail(words.get(ofDetails.nextInt(3)), OptionalDouble.empty()));
      }
    }
    return details;
  }

  /** The code of a detail of these, with one of its first words. */
  static String detail(Random random) {
    DetailKind kind =
        DetailKind.ofMethods().find(DETAILS.get(random.nextInt(DETAILS.size()))).orElseThrow();
    return kind.code() + ":" + kind.values().get(random.nextInt(3)).replace(' ', '-');
  }

  private Method method() {
    return Method.vocabulary().all().get(random.nextInt(4));
  }

  private void addOutcome(List<OutcomeReport> outcomes, Scope scope) {
    if (random.nextInt(3) > 0) {
      Outcome outcome = Outcome.of(OUTCOMES[random.nextInt(3)]);
      ReportedValue value = new ReportedValue.Events(EventCount.of(random.nextInt(5), 5));
      outcomes.add(OutcomeReport.with(scope, outcome, value).build());
    }
  }

  private Baseline baseline() {
    Baseline.Builder baseline = Baseline.with();
    if (random.nextInt(4) > 0) {
      baseline.patients(1 + random.nextInt(40));
    }
    if (random.nextInt(3) > 0) {
      baseline.infected(EventCount.of(random.nextInt(3), 2));
    }
    if (random.nextInt(3) > 0) {
      Bone bone = Bone.values()[random.nextInt(3)];
      baseline.bones(List.of(new BoneCount(bone, OptionalInt.of(random.nextInt(3)))));
    }
    if (random.nextInt(3) == 0) {
      baseline.segments(List.of(random.nextBoolean() ? "32" : "42", "43"));
    }
    if (random.nextInt(3) > 0) {
      baseline.defect(defect());
    }
    if (random.nextInt(2) > 0) {
      baseline.followUp(followUp());
    }
    return baseline.build();
  }

  /** On the grid of what is asked for, so that equal ends occur often. */
  private QuantitySummary followUp() {
    QuantitySummaryBuilder numbers =
        QuantitySummary.with(random.nextBoolean() ? Unit.YEARS : Unit.MONTHS);
    double value = numbers.build().unit() == Unit.YEARS ? random.nextInt(4) : 6 * random.nextInt(8);
    return switch (random.nextInt(4)) {
      case 0 -> numbers.mean(value).minimum(0).build();
      case 1 -> numbers.median(value).build();
      case 2 -> numbers.minimum(value).build();
      default -> numbers.maximum(value).build();
    };
  }

  private DefectLength defect() {
    QuantitySummaryBuilder numbers =
        QuantitySummary.with(random.nextBoolean() ? Unit.CENTIMETRES : Unit.MILLIMETRES);
    double low = random.nextInt(20);
    double high = low + random.nextInt(80);
    return switch (random.nextInt(6)) {
      case 0 -> DefectLength.of(numbers.mean((low + high) / 2).minimum(low).maximum(high).build());
      case 1 -> DefectLength.of(numbers.median(high).build());
      case 2 -> DefectLength.of(numbers.mean(low).standardDeviation(high).build());
      case 3 -> DefectLength.of(numbers.lowerQuartile(low).upperQuartile(high).build());
      case 4 -> other(OptionalDouble.of(1 + random.nextInt(9)), List.of());
      default ->
          other(
              OptionalDouble.empty(),
              List.of(new DefectLength.Band(new LengthRange(low, high), random.nextInt(2))));
    };
  }

  private static DefectLength other(OptionalDouble over, List<DefectLength.Band> bands) {
    return new DefectLength(
        Optional.empty(), over, bands, Optional.of("in words"), Optional.empty(), Optional.empty());
  }

  private void addPatients(List<PatientRow> patients, String arm) {
    int count = random.nextInt(3) == 0 ? 1 + random.nextInt(4) : 0;
    for (int i = 0; i < count; i++) {
      PatientRow.Builder patient = PatientRow.with("case " + arm + i, arm);
      if (random.nextInt(4) > 0) {
        patient.defect(new Length(1 + random.nextInt(200), Unit.MILLIMETRES, false));
      }
      if (random.nextInt(4) == 0) {
        boolean years = random.nextBoolean();
        double value = years ? random.nextInt(4) : 6 * random.nextInt(8);
        patient.followUp(new Duration(value, years ? Unit.YEARS : Unit.MONTHS));
      }
      if (random.nextBoolean()) {
        patient.infected(YesOrNo.values()[random.nextInt(4)]);
      }
      if (random.nextBoolean()) {
        patient.bone(Bone.values()[random.nextInt(4)]).segment("33");
      }
      if (random.nextBoolean()) {
        SortedMap<String, PatientOutcome> outcomes = new TreeMap<>();
        outcomes.put(OUTCOMES[3], new PatientOutcome.Measured(4 + random.nextInt(9), Unit.MONTHS));
        patient.outcomes(outcomes);
      }
      patients.add(patient.build());
    }
  }

  private String pick(String[] words) {
    return words[random.nextInt(words.length)];
  }
}
