package gapwise.evidence.check;

import gapwise.evidence.Detail;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Group;
import gapwise.evidence.rule.GroupRule;
import gapwise.evidence.rule.Printed;
import gapwise.evidence.rule.RecordPart;
import gapwise.evidence.vocabulary.DetailKind;
import gapwise.evidence.vocabulary.Vocabulary;
import java.util.SortedMap;

/**
 * Details of methods and characteristics of patients against the limits and words that their
 * vocabulary gives.
 */
final class DetailLimits implements GroupRule {
  @Override
  public void check(Group group, Findings findings) {
    check(group, group.baseline().characteristics(), DetailKind.ofPatients(), findings);
    group.arm().ifPresent(arm -> check(group, arm.details(), DetailKind.ofMethods(), findings));
  }

  private static void check(
      Group group,
      SortedMap<String, Detail> details,
      Vocabulary<DetailKind> vocabulary,
      Findings findings) {
    details.forEach(
        (code, detail) -> {
          RecordPart part = group.part(code.replace('-', '_'));
          vocabulary
              .find(code)
              .ifPresentOrElse(
                  kind -> check(part, kind, detail, findings),
                  () ->
                      findings.impossible(
                          part,
                          "unknown-detail",
                          "There is no detail '" + code + "'. Check its name."));
        });
  }

  private static void check(RecordPart part, DetailKind kind, Detail detail, Findings findings) {
    if (kind.numeric() && detail.number().isEmpty()) {
      findings.doubtful(
          part,
          "number-expected",
          "Found '"
              + detail.words()
              + "' where one number was expected ("
              + kind.label()
              + "). The words are kept but not compared with other studies.");
    } else if (!kind.values().isEmpty() && !kind.values().contains(detail.words())) {
      findings.doubtful(
          part,
          "unlisted-word",
          "Found '"
              + detail.words()
              + "'; expected one of "
              + String.join(", ", kind.values())
              + ". The words are kept but not found by these.");
    }
    if (detail.number().isPresent()) {
      limits(part, kind, detail.number().getAsDouble(), findings);
    }
  }

  private static void limits(RecordPart part, DetailKind kind, double value, Findings findings) {
    boolean impossible =
        value < kind.errorBelow().orElse(Double.NEGATIVE_INFINITY)
            || value > kind.errorAbove().orElse(Double.POSITIVE_INFINITY);
    boolean doubtful =
        value < kind.warnBelow().orElse(Double.NEGATIVE_INFINITY)
            || value > kind.warnAbove().orElse(Double.POSITIVE_INFINITY);
    String found = Printed.number(value) + " (" + kind.label() + ")";
    if (impossible) {
      findings.impossible(
          part, "detail-impossible", found + " cannot be. Check the number and its unit.");
    } else if (doubtful) {
      findings.doubtful(
          part, "detail-unusual", found + " is unusual. Check the number and its unit.");
    }
  }
}
