package gapwise.reference.format;

/** Fields that a reference has once. */
enum Once {
  JOURNAL,
  SHORT_JOURNAL,
  DATE,
  VOLUME,
  ISSUE,
  PAGES,
  ISSN,
  PUBLISHER,
  ABSTRACT,
  LANGUAGE,
  LINK,
  DOI,
  PMID,
  PMCID,
  TRIAL,
  ORIGINAL_TITLE
}
