package gapwise.evidence.check;

import gapwise.appraisal.Conclusion;
import gapwise.evidence.Appraisal;
import gapwise.evidence.Study;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.RecordPart;
import gapwise.evidence.rule.StudyRule;
import gapwise.evidence.vocabulary.Instrument;
import java.util.stream.Collectors;

/**
 * An appraisal that its instrument does not allow, or not whole: better over all than its worst
 * domain (Sterne et al., BMJ 2016;355:i4919; BMJ 2019;366:l4898), items without an answer, no
 * outcome where the instrument asks for one, an instrument for other designs or of another version.
 */
final class AppraisalWhole implements StudyRule {
  @Override
  public void check(Study study, Findings findings) {
    for (int index = 0; index < study.appraisals().size(); index++) {
      check(study, index, findings);
    }
  }

  private static void check(Study study, int index, Findings findings) {
    Appraisal appraisal = study.appraisals().get(index);
    Instrument instrument = appraisal.instrument();
    Conclusion conclusion = Conclusion.of(appraisal);
    if (conclusion.whole() instanceof Conclusion.Whole.BetterThanRule better) {
      findings.doubtful(
          part(study, index, "judgement"),
          "overall-better-than-worst-domain",
          "The study is "
              + better.said().label()
              + " over all, but "
              + better.worst().label()
              + " in a domain. By "
              + instrument.label()
              + " the whole is at least as bad as the worst domain. Correct one of them; until then"
              + " the worst domain counts.");
    }
    if (!conclusion.unanswered().isEmpty()) {
      findings.doubtful(
          part(study, index, "item"),
          "appraisal-incomplete",
          "There is no judgement of "
              + conclusion.unanswered().stream()
                  .map(Instrument.Item::code)
                  .collect(Collectors.joining(", "))
              + ". Add a row for each, or confirm that they were left open.");
    }
    if (instrument.perOutcome() && appraisal.outcome().isEmpty()) {
      findings.doubtful(
          part(study, index, "outcome"),
          "appraisal-without-outcome",
          instrument.label()
              + " judges one outcome at a time, and none is named here. Name it; left blank, the"
              + " judgement counts for every outcome of the study.");
    }
    study
        .design()
        .filter(design -> !instrument.designs().contains(design))
        .ifPresent(
            design ->
                findings.doubtful(
                    part(study, index, "instrument"),
                    "instrument-for-another-design",
                    instrument.label()
                        + " is made for other designs than a "
                        + design.label()
                        + ". Check the design on the sheet studies, or judge by another"
                        + " instrument."));
    if (!appraisal.version().equals(instrument.version())) {
      findings.doubtful(
          part(study, index, "instrument_version"),
          "instrument-of-another-version",
          "Judged by version "
              + appraisal.version()
              + " of "
              + instrument.label()
              + ", and the items here are those of "
              + instrument.version()
              + ". Check that they mean the same.");
    }
  }

  private static RecordPart part(Study study, int index, String field) {
    return new RecordPart.OfAppraisal(study.id(), index, field);
  }
}
