package gapwise.evidence.check;

import gapwise.evidence.Study;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.RecordPart;
import gapwise.evidence.rule.StudyRule;

/** Recruitment that ends before it starts, after publication, or spans an age. */
final class RecruitmentDates implements StudyRule {
  /** Methods change over so long a time; common practice, no source. */
  private static final int LONGEST_MONTHS = 25 * 12;

  @Override
  public void check(Study study, Findings findings) {
    if (study.recruitmentTo().isEmpty()) {
      return;
    }
    var end = study.recruitmentTo().get();
    RecordPart part = new RecordPart.OfStudy(study.id(), "recruitment_to");
    if (study.citation().year().isPresent() && end.year() > study.citation().year().getAsInt()) {
      findings.impossible(
          part,
          "recruitment-after-publication",
          "Recruitment ended in "
              + end
              + ", after publication in "
              + study.citation().year().getAsInt()
              + ". Check both years.");
    }
    if (study.recruitmentFrom().isEmpty()) {
      return;
    }
    var start = study.recruitmentFrom().get();
    if (end.latestMonth() < start.earliestMonth()) {
      findings.impossible(
          part,
          "recruitment-ends-before-start",
          "Recruitment ended in " + end + ", before it started in " + start + ". Check both.");
    } else if (end.earliestMonth() - start.latestMonth() > LONGEST_MONTHS) {
      findings.doubtful(
          part,
          "recruitment-long",
          "Recruitment from "
              + start
              + " to "
              + end
              + " spans more than 25 years. Check both years.");
    }
  }
}
