package gapwise.desk;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.Arm;
import gapwise.evidence.ArmFollowUp;
import gapwise.evidence.Baseline;
import gapwise.evidence.DefectLength;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.Study;
import gapwise.evidence.unit.LengthRange;
import gapwise.exchange.Template;
import gapwise.figure.value.Shown;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * Where a group stands by its missing length, age and follow-up: always by numbers as printed,
 * never by one that is worked out. Of a plain mean nothing is told.
 */
final class UsedBaseline {
  private UsedBaseline() {}

  static List<Noted> of(Study study, DraftRow row) {
    boolean all = row.text(Template.ARM).equals(Template.ALL);
    Optional<Baseline> own =
        all ? Optional.of(study.whole()) : UsedBySynthesis.arm(study, row).map(Arm::baseline);
    List<Noted> told = new ArrayList<>();
    own.flatMap(Baseline::defect)
        .filter(defect -> defect.summary().filter(UsedBaseline::isMore).isPresent())
        .ifPresent(defect -> told.add(noted(row, "defect_length_", length(defect))));
    own.flatMap(Baseline::age)
        .filter(UsedBaseline::isMore)
        .ifPresent(age -> told.add(noted(row, "age_", age(age))));
    own.filter(one -> one.followUp().filter(UsedBaseline::isMore).isPresent())
        .flatMap(one -> followUp(study, row, all))
        .ifPresent(sentences -> told.add(noted(row, "follow_up_", sentences)));
    return told;
  }

  /** Whether something else stands there than a mean with its standard deviation. */
  private static boolean isMore(QuantitySummary summary) {
    return summary.mean().isEmpty()
        || summary.standardError().isPresent()
        || summary.lowerLimit().isPresent()
        || summary.lowerQuartile().isPresent()
        || summary.minimum().isPresent()
        || summary.unstatedSpread().isPresent();
  }

  private static Noted noted(DraftRow row, String start, List<String> sentences) {
    Stream<String> columns =
        Stream.of("median", "mean", "min", "max", "q1", "q3", "se", "ci_lower", "spread_unstated")
            .map(column -> start + column);
    return UsedBySynthesis.noted(row, columns, sentences);
  }

  private static List<String> length(DefectLength defect) {
    List<String> all = new ArrayList<>();
    OptionalDouble centre = defect.centreCentimetres();
    boolean mean = defect.summary().filter(one -> one.mean().isPresent()).isPresent();
    all.add(
        centre.isEmpty()
            ? say("desk.used-length-no-centre")
            : say(
                mean ? "desk.used-length-mean" : "desk.used-length-median",
                Map.of("length", Shown.centimetres(centre.getAsDouble()))));
    Optional<LengthRange> range =
        defect.closedRange().filter(one -> one.fromCentimetres() < one.toCentimetres());
    range.ifPresent(
        one ->
            all.add(
                say(
                    "desk.used-length-range",
                    Map.of(
                        "from", Shown.centimetres(one.fromCentimetres()),
                        "to", Shown.centimetres(one.toCentimetres())))));
    return all;
  }

  private static List<String> age(QuantitySummary age) {
    if (age.centre().isEmpty()) {
      return List.of(say("desk.used-age-no-centre"));
    }
    return List.of(say(age.mean().isPresent() ? "desk.used-age-mean" : "desk.used-age-median"));
  }

  private static Optional<List<String>> followUp(Study study, DraftRow row, boolean all) {
    Optional<ArmFollowUp> known =
        all
            ? study.arms().stream().findFirst().flatMap(arm -> ArmFollowUp.of(study, arm))
            : UsedBySynthesis.arm(study, row).flatMap(arm -> ArmFollowUp.of(study, arm));
    return known.map(
        one ->
            one.leastMonths().isEmpty()
                ? List.of(say("desk.used-follow-up-none"))
                : List.of(
                    say(
                        one.centreMonths().isEmpty()
                            ? "desk.used-follow-up-shortest"
                            : one.months().mean().isPresent()
                                ? "desk.used-follow-up-mean"
                                : "desk.used-follow-up-median",
                        Map.of("months", Shown.months(one.leastMonths().getAsDouble())))));
  }
}
