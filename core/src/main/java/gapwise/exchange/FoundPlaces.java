package gapwise.exchange;

import gapwise.evidence.OutcomeReport;
import gapwise.evidence.PublishedCurve;
import gapwise.evidence.Study;
import gapwise.evidence.rule.Finding;
import gapwise.evidence.rule.RecordPart;
import gapwise.evidence.rule.Severity;
import gapwise.problem.Problem;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;

/** Says where in the sheets a finding about a record stands. */
final class FoundPlaces {
  /** Sixteen hexadecimal digits; a chance repeat among a million doubts is below one in 10^7. */
  private static final int KEY_BYTES = 8;

  private final TemplateReading reading;
  private final Map<String, StudyDraft> drafts = new HashMap<>();
  private final Map<String, Study> studies = new HashMap<>();

  FoundPlaces(TemplateReading reading, List<Study> studies) {
    this.reading = reading;
    reading.drafts().forEach(draft -> drafts.put(draft.id(), draft));
    studies.forEach(study -> this.studies.put(study.id(), study));
  }

  Problem problem(Finding finding) {
    return new Problem(
        where(finding.part()), finding.code(), finding.message(), finding.part().study());
  }

  Warning warning(Finding finding) {
    String which = finding.same().orElseGet(() -> which(finding));
    return new Warning(
        key(finding.code() + "|" + which),
        problem(finding),
        finding.severity() == Severity.DOUBTFUL);
  }

  private String which(Finding finding) {
    RecordPart part = finding.part();
    return String.join("|", part.study(), whose(part), part.field(), finding.message());
  }

  /**
   * A doubt about the file and no study of it. It is another doubt with other studies, for a sheet
   * of the same name can hold anything there.
   */
  Warning warning(Problem problem) {
    String ids = String.join("|", new TreeSet<>(drafts.keySet()));
    return new Warning(key(String.join("|", problem.code(), problem.line(), ids)), problem, true);
  }

  private static String key(String what) {
    try {
      byte[] hash =
          MessageDigest.getInstance("SHA-256").digest(what.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(hash, 0, KEY_BYTES);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  /** Which part of a study, told by its content and not by its row, for rows move. */
  private String whose(RecordPart part) {
    if (part instanceof RecordPart.OfOutcome outcome) {
      OutcomeReport report = held(studies, outcome.study()).outcomes().get(outcome.index());
      return "outcome " + report.scope() + report.outcome().code() + report.value();
    }
    if (part instanceof RecordPart.OfArm arm) {
      return "arm " + arm.arm();
    }
    if (part instanceof RecordPart.OfPatient patient) {
      return "patient " + patient.patient();
    }
    if (part instanceof RecordPart.OfAppraisal one) {
      return "appraisal " + held(studies, one.study()).appraisals().get(one.index()).matter();
    }
    if (part instanceof RecordPart.OfCurve one) {
      PublishedCurve curve = held(studies, one.study()).curves().get(one.index());
      return "curve " + curve.arm() + curve.outcome().code();
    }
    return part instanceof RecordPart.OfAllArms ? "all" : "study";
  }

  private String where(RecordPart part) {
    StudyDraft draft = held(drafts, part.study());
    if (part instanceof RecordPart.OfOutcome outcome) {
      int row = draft.outcomes().get(outcome.index()).row();
      return reading.at(OutcomeSheet.SHEET, row, part.field());
    }
    if (part instanceof RecordPart.OfArm arm) {
      return reading.at(ArmSheet.SHEET, held(draft.arms(), arm.arm()).row(), part.field());
    }
    if (part instanceof RecordPart.OfAllArms) {
      return draft
          .whole()
          .map(row -> reading.at(ArmSheet.SHEET, row.row(), part.field()))
          .orElseGet(() -> study(draft, ""));
    }
    if (part instanceof RecordPart.OfPatient patient) {
      int row = held(draft.patients(), patient.patient()).row();
      return reading.at(PatientSheet.FULL, row, part.field());
    }
    if (part instanceof RecordPart.OfAppraisal one) {
      int row = draft.appraisals().get(one.index()).row();
      return reading.at(AppraisalSheet.SHEET, row, part.field());
    }
    if (part instanceof RecordPart.OfCurve one) {
      int row = draft.curves().row(one.index(), part.field());
      return reading.at(CurveSheet.SHEET, row, part.field());
    }
    return study(draft, part.field());
  }

  /** What was read under a name that a finding gives. */
  private static <V> V held(Map<String, V> read, String name) {
    return Objects.requireNonNull(read.get(name), name);
  }

  private String study(StudyDraft draft, String field) {
    return reading.at(StudySheet.SHEET, draft.study().orElseThrow().row(), field);
  }
}
