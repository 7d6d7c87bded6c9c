package gapwise.place;

import gapwise.answer.Answers;
import gapwise.curation.EvidenceBase;
import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.DefectLength;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.QuantitySummaryBuilder;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.Phase;
import gapwise.search.StudyIndex;
import gapwise.selection.Selector;
import gapwise.store.DocumentStore;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** An evidence base of invented series, open for a test. */
final class InventedSeries implements AutoCloseable {
  private final DocumentStore store;
  private final StudyIndex search;
  private final Answers answers;
  private final EvidenceBase base;

  private InventedSeries(Path home, List<Study> studies) {
    store = DocumentStore.open(home, java.time.Clock.systemUTC());
    search = StudyIndex.open(home.resolve("index"), store, EvidenceBase.STUDY, message -> {});
    base = new EvidenceBase(store);
    base.saveAll(studies.iterator(), "a reviewer", "invented series", List.of());
    answers = new Answers(new Selector(search.shown(), base.latest())::select);
  }

  /**
   * Union after transport in twelve series counted from the frame, one without SD and one more
   * method of two; and after the membrane in four counted from grafting. Series i of the twelve has
   * a mean length of 4 + i/2 cm, 10 + 2i patients, 6 + 0.6 i months and 0.9 more where i is a
   * multiple of 3, else 0.3 less, and an SD of 1.5 + i/10 months.
   */
  static InventedSeries open(Path home) {
    List<Study> studies = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      double months = 6 + 0.6 * i + (i % 3 == 0 ? 0.9 : -0.3);
      QuantitySummaryBuilder time = time(10 + 2 * i, months).standardDeviation(1.5 + 0.1 * i);
      studies.add(study("transport-" + i, "bone-transport", Clock.FRAME_ON, 4 + 0.5 * i, time));
    }
    studies.add(study("bare", "bone-transport", Clock.FRAME_ON, 6, time(9, 5)));
    for (int i = 0; i < 4; i++) {
      QuantitySummaryBuilder time = time(12, 7 + i).standardDeviation(2);
      studies.add(study("membrane-" + i, "induced-membrane", Clock.GRAFTING, 5 + i, time));
    }
    for (int i = 0; i < 2; i++) {
      QuantitySummaryBuilder time = time(8, 9 + 2 * i).standardDeviation(2);
      studies.add(study("graft-" + i, "autograft", Clock.FRAME_ON, 3 + i, time));
    }
    QuantitySummaryBuilder lone = time(9, 8).standardDeviation(2);
    studies.add(study("lone", "allograft", Clock.FRAME_ON, 5, lone));
    return new InventedSeries(home, studies);
  }

  /** Union after the membrane in one series that counts from grafting and five that do not say. */
  static InventedSeries mostlySilent(Path home) {
    List<Study> studies = new ArrayList<>();
    for (int i = 0; i < 6; i++) {
      QuantitySummaryBuilder time = time(12, 7 + i).standardDeviation(2);
      Optional<Clock> clock = i == 0 ? Optional.of(Clock.GRAFTING) : Optional.empty();
      studies.add(study("membrane-" + i, "induced-membrane", clock, 5 + i, time));
    }
    return new InventedSeries(home, studies);
  }

  /**
   * Phases of transport, one series each: distraction of 2 and of 3 months, consolidation of 6, and
   * the whole time in the frame of 9, 10 and 11.
   */
  static InventedSeries withPhases(Path home) {
    List<Study> studies = new ArrayList<>();
    studies.add(inPhase("two", Phase.DISTRACTION, 2));
    studies.add(inPhase("three", Phase.DISTRACTION, 3));
    studies.add(inPhase("six", Phase.CONSOLIDATION, 6));
    for (int i = 9; i <= 11; i++) {
      studies.add(inPhase("whole-" + i, Phase.IN_FRAME, i));
    }
    return new InventedSeries(home, studies);
  }

  private static Study inPhase(String id, Phase phase, double months) {
    return study(id, "bone-transport", Clock.FRAME_ON, 6, time(10, months))
        .but()
        .outcomes(
            List.of(
                OutcomeReport.with(
                        new Scope.OneArm("A"),
                        Outcome.of("treatment-phase"),
                        new ReportedValue.Quantity(time(10, months).build()))
                    .phase(phase)
                    .build()))
        .build();
  }

  private static QuantitySummaryBuilder time(int n, double months) {
    return QuantitySummary.with(Unit.MONTHS).n(n).mean(months);
  }

  private static Study study(
      String id, String method, Clock clock, double centimetres, QuantitySummaryBuilder months) {
    return study(id, method, Optional.of(clock), centimetres, months);
  }

  private static Study study(
      String id,
      String method,
      Optional<Clock> clock,
      double centimetres,
      QuantitySummaryBuilder months) {
    Baseline baseline =
        Baseline.with()
            .patients(40)
            .defect(
                DefectLength.of(QuantitySummary.with(Unit.CENTIMETRES).mean(centimetres).build()))
            .build();
    return Study.with(id, Citation.with("Invented series " + id).firstAuthor(id).year(2020).build())
        .invented(true)
        .arms(List.of(Arm.with("A", MethodUsed.of(Method.of(method))).baseline(baseline).build()))
        .outcomes(List.of(union(clock, months)))
        .build();
  }

  private static OutcomeReport union(Optional<Clock> clock, QuantitySummaryBuilder months) {
    OutcomeReport.Builder report =
        OutcomeReport.with(
            new Scope.OneArm("A"),
            Outcome.of("time-to-union"),
            new ReportedValue.Quantity(months.build()));
    clock.ifPresent(report::clock);
    return report.build();
  }

  PlacedCases cases() {
    return new PlacedCases(answers);
  }

  UsualCourses usual() {
    return new UsualCourses(
        answers, search.shown(), id -> base.latest().study(id).map(kept -> kept.study()));
  }

  @Override
  public void close() {
    search.close();
    store.close();
  }
}
