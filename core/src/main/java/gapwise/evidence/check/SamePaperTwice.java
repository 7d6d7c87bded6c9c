package gapwise.evidence.check;

import gapwise.evidence.Citation;
import gapwise.evidence.Study;
import gapwise.evidence.rule.CollectionRule;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.FoldedText;
import gapwise.evidence.rule.RecordPart;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * One paper under two ids: the same DOI or PubMed number, or the same title, year and first author
 * however spelt. Studies that are linked already are left alone.
 */
final class SamePaperTwice implements CollectionRule {
  private record Sign(String field, String value) {}

  @Override
  public void check(List<Study> fresh, List<Study> known, Findings findings) {
    Map<Sign, Study> first = new HashMap<>();
    known.forEach(study -> signs(study).forEach(sign -> first.putIfAbsent(sign, study)));
    for (Study study : fresh) {
      for (Sign sign : signs(study)) {
        Study before = first.putIfAbsent(sign, study);
        if (before != null && !before.id().equals(study.id()) && !linked(before, study)) {
          findings.doubtful(
              new RecordPart.OfStudy(study.id(), sign.field()),
              "same-paper-twice",
              "Study '"
                  + before.id()
                  + "' has the same "
                  + (sign.field().equals("title") ? "title, year and first author" : sign.field())
                  + ". If it is the same paper, keep one; if both report the same patients, name the"
                  + " other in same_study_as.");
          break;
        }
      }
    }
  }

  static boolean linked(Study a, Study b) {
    return a.sameStudyAs().contains(b.id())
        || b.sameStudyAs().contains(a.id())
        || a.overlapSuspectedWith().contains(b.id())
        || b.overlapSuspectedWith().contains(a.id())
        || (a.cohort().isPresent() && a.cohort().equals(b.cohort()));
  }

  private static List<Sign> signs(Study study) {
    Citation citation = study.citation();
    List<Sign> signs = new ArrayList<>();
    citation.doi().ifPresent(doi -> signs.add(new Sign("doi", doi.toLowerCase(Locale.ROOT))));
    citation.pmid().ifPresent(pmid -> signs.add(new Sign("pmid", pmid)));
    if (citation.year().isPresent()) {
      String rest =
          "|" + citation.year().getAsInt() + "|" + FoldedText.of(citation.firstAuthor().orElse(""));
      signs.add(new Sign("title", FoldedText.of(citation.title()) + rest));
      for (String other : citation.otherSpellings()) {
        String folded = FoldedText.of(other);
        signs.add(new Sign("title", folded + rest));
        signs.add(
            new Sign(
                "title",
                FoldedText.of(citation.title()) + "|" + citation.year().getAsInt() + "|" + folded));
      }
    }
    return signs;
  }
}
