package gapwise.server.page.studies;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.PatientOutcome;
import gapwise.evidence.PatientRow;
import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.Sex;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.figure.value.Shown;
import gapwise.wording.Segments;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * One patient as a paper describes them, as a line of a table.
 *
 * @param id name within the study
 * @param group id of the arm
 * @param who age, sex, bone
 * @param defect missing bone
 * @param outcomes what became of them
 * @param place where in the paper
 * @param readings where single numbers stand on its pages
 */
public record PatientLine(
    String id,
    String group,
    String who,
    String defect,
    String outcomes,
    String place,
    List<ReadAt> readings) {
  public PatientLine {
    readings = List.copyOf(readings);
  }

  static PatientLine of(PatientRow patient) {
    return new PatientLine(
        patient.id(),
        patient.armId(),
        who(patient),
        patient
            .defect()
            .map(
                length ->
                    say(
                        length.approximate()
                            ? "studies.about-length-of-patient"
                            : "studies.length-of-patient",
                        Map.of("length", Shown.centimetres(length.centimetres()))))
            .orElseGet(() -> say("studies.length-not-stated")),
        patient.outcomes().entrySet().stream()
            .map(e -> label(e.getKey()) + ": " + words(e.getValue()))
            .collect(Collectors.joining("; ")),
        patient.provenance().place().orElse(""),
        ReadAt.of(patient.provenance()));
  }

  private static String who(PatientRow patient) {
    List<String> parts = new ArrayList<>();
    if (patient.ageYears().isPresent()) {
      parts.add(
          say("studies.age", Map.of("years", Shown.centimetres(patient.ageYears().getAsDouble()))));
    }
    patient.sex().map(Sex::label).ifPresent(parts::add);
    patient
        .segment()
        .map(Segments::name)
        .or(() -> patient.bone().map(Bone::label))
        .ifPresent(parts::add);
    patient
        .infected()
        .ifPresent(
            answer ->
                parts.add(
                    say(
                        answer == YesOrNo.YES
                            ? "studies.patient-infected"
                            : answer == YesOrNo.NO
                                ? "studies.patient-not-infected"
                                : "studies.patient-infection-unclear")));
    patient
        .followUp()
        .ifPresent(
            time ->
                parts.add(
                    say(
                        "studies.patient-followed",
                        Map.of("time", Shown.number(time.value()) + " " + time.unit().symbol()))));
    return String.join(", ", parts);
  }

  private static String label(String code) {
    return Outcome.vocabulary().find(code).map(Outcome::label).orElse(code);
  }

  private static String words(PatientOutcome outcome) {
    if (outcome instanceof PatientOutcome.Happened happened) {
      return happened.answer().label();
    }
    if (outcome instanceof PatientOutcome.Graded graded) {
      return graded.grade();
    }
    PatientOutcome.Measured measured = (PatientOutcome.Measured) outcome;
    return Shown.number(measured.value()) + " " + measured.unit().symbol();
  }
}
