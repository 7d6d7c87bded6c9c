package gapwise.evidence.check;

import gapwise.evidence.Study;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.RecordPart;
import gapwise.evidence.rule.StudyRule;
import java.util.regex.Pattern;

/** Identifiers that do not look like what they should be. */
final class IdentifierForms implements StudyRule {
  /** ISO 26324: a prefix that starts with "10.", a slash, a suffix. */
  private static final Pattern DOI = Pattern.compile("10\\.\\d{4,9}(\\.\\d+)*/\\S+");

  private static final Pattern PMID = Pattern.compile("\\d{1,8}");

  @Override
  public void check(Study study, Findings findings) {
    study
        .citation()
        .doi()
        .filter(doi -> !DOI.matcher(doi).matches())
        .ifPresent(
            doi ->
                findings.doubtful(
                    new RecordPart.OfStudy(study.id(), "doi"),
                    "doi-form",
                    "'"
                        + doi
                        + "' does not look like a DOI. Something like 10.1000/182 was expected,"
                        + " without an address before it."));
    study
        .citation()
        .pmid()
        .filter(pmid -> !PMID.matcher(pmid).matches())
        .ifPresent(
            pmid ->
                findings.doubtful(
                    new RecordPart.OfStudy(study.id(), "pmid"),
                    "pmid-form",
                    "'" + pmid + "' does not look like a PubMed number: up to 8 digits."));
  }
}
