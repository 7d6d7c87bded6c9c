package gapwise.demonstration;

import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Method;
import java.util.List;
import java.util.Optional;

/**
 * Who is in an invented arm and how its missing length is reported. Built by changing {@link #of}.
 *
 * @param method code of the principal method
 * @param parts codes of further parts
 * @param words the method as the paper would say it
 * @param patients patients, at least 1
 * @param secondLimbs patients of whom both limbs are treated
 * @param meanCentimetres length around which defects are drawn
 * @param shortestCentimetres where selection by length cuts off
 * @param length how the length is reported
 * @param infectedShare chance that a limb is infected at the start
 * @param femurShare chance that the bone is the femur rather than the tibia
 * @param bone the bone of all limbs, where it is neither or where only one is taken
 * @param followUpMonths mean
 * @param lost limbs lost to follow-up
 * @param stages planned operations
 * @param patientTable whether the paper describes each patient
 */
record ArmPlan(
    String method,
    List<String> parts,
    Optional<String> words,
    int patients,
    int secondLimbs,
    double meanCentimetres,
    double shortestCentimetres,
    LengthStyle length,
    double infectedShare,
    double femurShare,
    Optional<Bone> bone,
    double followUpMonths,
    int lost,
    int stages,
    boolean patientTable) {

  ArmPlan {
    parts = List.copyOf(parts);
  }

  /** An arm in the tibia, 28 months of follow-up, nobody lost, half of the limbs infected. */
  static ArmPlan of(String method, int patients, double meanCentimetres, LengthStyle length) {
    int stages = method.equals("induced-membrane") ? 2 : 1;
    return new ArmPlan(
        method,
        List.of(),
        Optional.empty(),
        patients,
        0,
        meanCentimetres,
        1,
        length,
        0.5,
        0,
        Optional.empty(),
        28,
        0,
        stages,
        length == LengthStyle.PER_PATIENT);
  }

  boolean framed() {
    return Method.of(method).frame() || parts.contains("ring-frame");
  }

  int limbs() {
    return patients + secondLimbs;
  }

  ArmPlan parts(String text, String... codes) {
    return new ArmPlan(
        method,
        List.of(codes),
        Optional.of(text),
        patients,
        secondLimbs,
        meanCentimetres,
        shortestCentimetres,
        length,
        infectedShare,
        femurShare,
        bone,
        followUpMonths,
        lost,
        stages,
        patientTable);
  }

  ArmPlan secondLimbs(int value) {
    return changed(value, shortestCentimetres, infectedShare, femurShare, bone, followUpMonths);
  }

  ArmPlan over(double centimetres) {
    return changed(secondLimbs, centimetres, infectedShare, femurShare, bone, followUpMonths);
  }

  ArmPlan infected(double share) {
    return changed(secondLimbs, shortestCentimetres, share, femurShare, bone, followUpMonths);
  }

  ArmPlan femurs(double share) {
    return changed(secondLimbs, shortestCentimetres, infectedShare, share, bone, followUpMonths);
  }

  ArmPlan bone(Bone only) {
    Optional<Bone> all = Optional.of(only);
    return changed(
        secondLimbs, shortestCentimetres, infectedShare, femurShare, all, followUpMonths);
  }

  ArmPlan followed(double months) {
    return changed(secondLimbs, shortestCentimetres, infectedShare, femurShare, bone, months);
  }

  ArmPlan lost(int limbs) {
    return new ArmPlan(
        method,
        parts,
        words,
        patients,
        secondLimbs,
        meanCentimetres,
        shortestCentimetres,
        length,
        infectedShare,
        femurShare,
        bone,
        followUpMonths,
        limbs,
        stages,
        patientTable);
  }

  private ArmPlan changed(
      int second, double shortest, double infected, double femur, Optional<Bone> all, double fu) {
    return new ArmPlan(
        method,
        parts,
        words,
        patients,
        second,
        meanCentimetres,
        shortest,
        length,
        infected,
        femur,
        all,
        fu,
        lost,
        stages,
        patientTable);
  }
}
