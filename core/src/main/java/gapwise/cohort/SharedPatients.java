package gapwise.cohort;

import static gapwise.sentence.Sentences.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Whether two papers may tell of the same patients: the same rows of patients, one register number,
 * or one hospital, team, time and method.
 */
final class SharedPatients {
  /** A register holds so many times the patients of one hospital at least. An assumption. */
  private static final int REGISTER_AGAINST_HOSPITAL = 2;

  private final StudyFacts one;
  private final StudyFacts two;
  private final Circumstances circumstances;

  private SharedPatients(StudyFacts one, StudyFacts two, Circumstances circumstances) {
    this.one = one;
    this.two = two;
    this.circumstances = circumstances;
  }

  static Optional<Found> judge(StudyFacts one, StudyFacts two, Circumstances circumstances) {
    SharedPatients judge = new SharedPatients(one, two, circumstances);
    return judge.byRows().or(judge::byRegisterNumber).or(judge::byCircumstances);
  }

  private Optional<Found> byRows() {
    if (!one.describesPatients() || !two.describesPatients()) {
      return Optional.empty();
    }
    SharedRows rows = SharedRows.of(prints(one), prints(two));
    boolean acquainted =
        circumstances.shared() > 0
            || circumstances.hospital() == Circumstances.Hospital.SAME
            || circumstances.hospital() == Circumstances.Hospital.LIKE;
    if (!rows.areBeyondChance(acquainted)) {
      return Optional.empty();
    }
    List<Sign> signs = new ArrayList<>();
    signs.add(
        Sign.agrees(
            Fact.PATIENT_ROWS,
            say(
                "cohort.rows-alike",
                Map.of(
                    "alike", rows.alike(), "first", rows.ofFirst(), "second", rows.ofSecond()))));
    signs.addAll(circumstances.signs());
    return Optional.of(new Found(Verdict.OVERLAPPING, Strength.STRONG, signs));
  }

  private static List<PatientPrint> prints(StudyFacts study) {
    return study.groups().stream().flatMap(group -> group.prints().stream()).toList();
  }

  private Optional<Found> byRegisterNumber() {
    Optional<String> number = one.print().register();
    if (number.isEmpty() || !number.equals(two.print().register())) {
      return Optional.empty();
    }
    List<Sign> signs = new ArrayList<>();
    signs.add(
        Sign.agrees(
            Fact.REGISTER_NUMBER, say("cohort.register-number", Map.of("number", number.get()))));
    signs.addAll(circumstances.signs());
    boolean fits = circumstances.fit() && circumstances.years() == Recruitment.Relation.OVERLAP;
    return Optional.of(
        new Found(
            fits ? Verdict.OVERLAPPING : Verdict.POSSIBLE,
            fits ? Strength.STRONG : Strength.WEAK,
            signs));
  }

  private Optional<Found> byCircumstances() {
    if (!circumstances.fit()) {
      return Optional.empty();
    }
    Optional<Verdict> verdict =
        switch (circumstances.hospital()) {
          case SAME -> inOneHospital(true);
          case LIKE -> inOneHospital(false);
          case UNKNOWN -> withoutHospital();
          case TOWN, DIFFERENT ->
              circumstances.teamIsNearlyTheSame()
                      && circumstances.years() == Recruitment.Relation.OVERLAP
                  ? Optional.of(Verdict.POSSIBLE)
                  : Optional.empty();
        };
    return verdict.map(
        found ->
            new Found(
                found,
                found == Verdict.POSSIBLE ? Strength.WEAK : Strength.MODERATE,
                circumstances.signs()));
  }

  private Optional<Verdict> inOneHospital(boolean certainly) {
    Recruitment.Relation years = circumstances.years();
    if (circumstances.teamAgrees()) {
      return Optional.of(
          years == Recruitment.Relation.OVERLAP && circumstances.fitWell()
              ? Verdict.OVERLAPPING
              : Verdict.POSSIBLE);
    }
    if (years == Recruitment.Relation.UNKNOWN) {
      return Optional.empty();
    }
    if (circumstances.shared() > 0 && circumstances.oneFitsIntoTheOther()) {
      return Optional.of(
          circumstances.fitWell() && years == Recruitment.Relation.OVERLAP
              ? Verdict.OVERLAPPING
              : Verdict.POSSIBLE);
    }
    boolean anotherTeam = circumstances.shared() == 0 && circumstances.teamsKnown();
    boolean ask =
        anotherTeam
            ? certainly && years == Recruitment.Relation.OVERLAP
            : certainly || circumstances.shared() > 0;
    return ask ? Optional.of(Verdict.POSSIBLE) : Optional.empty();
  }

  private Optional<Verdict> withoutHospital() {
    boolean years = circumstances.years() != Recruitment.Relation.UNKNOWN;
    boolean team =
        years
            ? circumstances.shared() >= 2 && circumstances.teamAgrees()
            : circumstances.teamIsNearlyTheSame();
    boolean register = holdsTheOther(one, two) || holdsTheOther(two, one);
    return team || register && circumstances.years() == Recruitment.Relation.OVERLAP
        ? Optional.of(Verdict.POSSIBLE)
        : Optional.empty();
  }

  /** Whether the first is of a register of a whole country, and the second of a hospital there. */
  private static boolean holdsTheOther(StudyFacts register, StudyFacts other) {
    return register.isRegister()
        && !other.centres().isEmpty()
        && !register.country().isEmpty()
        && register.country().equals(other.country())
        && register.patients() >= REGISTER_AGAINST_HOSPITAL * other.patients()
        && other.patients() > 0;
  }
}
