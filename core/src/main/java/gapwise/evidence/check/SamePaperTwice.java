package gapwise.evidence.check;

import gapwise.evidence.Citation;
import gapwise.evidence.Doi;
import gapwise.evidence.Study;
import gapwise.evidence.rule.CollectionRule;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.FoldedText;
import gapwise.evidence.rule.RecordPart;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/**
 * One paper under two ids: the same DOI or PubMed number, or the same title, year and first author
 * however spelt. Studies that are linked already are left alone.
 */
final class SamePaperTwice implements CollectionRule {
  private record Sign(String field, String value) {}

  @Override
  public void check(List<Study> fresh, List<Study> known, Findings findings) {
    Map<Sign, List<Study>> seen = new HashMap<>();
    known.forEach(study -> remember(study, seen));
    for (Study study : fresh) {
      Set<String> told = new HashSet<>();
      for (Sign sign : signs(study)) {
        twin(study, sign, seen)
            .filter(twin -> told.add(twin.id()))
            .ifPresent(twin -> doubt(study, sign, twin, findings));
      }
      remember(study, seen);
    }
  }

  private static void remember(Study study, Map<Sign, List<Study>> seen) {
    signs(study).forEach(sign -> seen.computeIfAbsent(sign, key -> new ArrayList<>()).add(study));
  }

  private static Optional<Study> twin(Study study, Sign sign, Map<Sign, List<Study>> seen) {
    return seen.getOrDefault(sign, List.of()).stream()
        .filter(other -> !other.id().equals(study.id()))
        .filter(other -> !linked(other, study))
        .findFirst();
  }

  private static void doubt(Study study, Sign sign, Study twin, Findings findings) {
    String shared =
        switch (sign.field()) {
          case "doi" -> "DOI (" + sign.value() + ")";
          case "pmid" -> "PubMed number (" + sign.value() + ")";
          default -> "title, year and first author";
        };
    findings.doubtfulPair(
        new RecordPart.OfStudy(study.id(), sign.field()),
        "same-paper-twice",
        "Study '"
            + twin.id()
            + "' has the same "
            + shared
            + ". If it is the same paper, keep one; if both report the same patients, name the"
            + " other in same_study_as.",
        twin.id(),
        sign.field() + "|" + sign.value());
  }

  @Override
  public Predicate<Study> near(List<Study> fresh) {
    Set<Sign> sought = new HashSet<>();
    fresh.forEach(study -> sought.addAll(signs(study)));
    return known -> !Collections.disjoint(signs(known), sought);
  }

  /** Case says nothing in a DOI (ISO 26324), nor does the address of a resolver before it. */
  private static String folded(String doi) {
    return Doi.bare(doi).toLowerCase(Locale.ROOT);
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
    citation.doi().ifPresent(doi -> signs.add(new Sign("doi", folded(doi))));
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
