package gapwise.evidence.check;

import gapwise.cohort.Bearing;
import gapwise.cohort.Fact;
import gapwise.cohort.Member;
import gapwise.cohort.OverlapSearch;
import gapwise.cohort.Proposal;
import gapwise.cohort.Sign;
import gapwise.cohort.Verdict;
import gapwise.evidence.Study;
import gapwise.evidence.rule.CollectionRule;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.RecordPart;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * One paper under two ids, the same patients in two papers, a group counted beside its whole: what
 * the room of cohorts proposes, asked when a template is read. Studies that are linked already are
 * left alone. Each new study is asked about one paper that it may be, and about every other study
 * whose patients it may share.
 */
final class OnePaperOneCohort implements CollectionRule {

  @Override
  public void check(List<Study> fresh, List<Study> known, Findings findings) {
    Map<String, Integer> places = new HashMap<>();
    fresh.forEach(study -> places.put(study.id(), places.size()));
    OverlapSearch search = new OverlapSearch();
    known.stream().filter(study -> !places.containsKey(study.id())).forEach(search::addKnown);
    fresh.forEach(search::add);
    Set<String> papers = new HashSet<>();
    for (Proposal proposal : search.find().proposals()) {
      if (proposal.first().arm().isPresent()) {
        partBeside(proposal, findings);
        continue;
      }
      boolean firstIsLater =
          places.getOrDefault(proposal.first().study(), -1)
              > places.getOrDefault(proposal.second().study(), -1);
      Member asked = firstIsLater ? proposal.first() : proposal.second();
      Member other = firstIsLater ? proposal.second() : proposal.first();
      if (proposal.verdict() != Verdict.SAME_PAPER) {
        samePatients(proposal, asked, other, findings);
      } else if (papers.add(asked.study())) {
        samePaper(proposal, asked, other, findings);
      }
    }
  }

  @Override
  public Predicate<Study> near(List<Study> fresh) {
    return OverlapSearch.near(fresh);
  }

  private static void samePaper(Proposal proposal, Member asked, Member other, Findings findings) {
    String column =
        proposal.signs(Bearing.AGREES).stream()
            .filter(sign -> sign.fact() == Fact.IDENTIFIER)
            .map(sign -> sign.sentence().contains("DOI") ? "doi" : "pmid")
            .findFirst()
            .orElse("title");
    findings.doubtfulPair(
        new RecordPart.OfStudy(asked.study(), column),
        "same-paper-twice",
        "Study '"
            + other
            + "' may be the same paper. "
            + known(proposal)
            + " If it is the same paper, keep one. If both report the same patients, name the other"
            + " in same_study_as.",
        other.study(),
        proposal.signs().get(0).sentence());
  }

  private static void samePatients(
      Proposal proposal, Member asked, Member other, Findings findings) {
    findings.doubtfulPair(
        new RecordPart.OfStudy(asked.study(), "centres"),
        "overlapping-cohorts",
        "Study '"
            + other
            + "' may tell of the same patients. "
            + reasons(proposal)
            + " If patients are in both, give both studies one name in cohort. If they may be, name"
            + " the other study in overlap_suspected_with.",
        other.study(),
        told(proposal));
  }

  private static void partBeside(Proposal proposal, Findings findings) {
    findings.doubtful(
        new RecordPart.OfArm(
            proposal.second().study(), proposal.second().arm().orElseThrow(), "label"),
        "part-beside-whole",
        "Groups "
            + proposal.first().arm().orElseThrow()
            + " and "
            + proposal.second().arm().orElseThrow()
            + " may be a part and its whole. "
            + reasons(proposal)
            + " If so, give the results of the part as subgroups of the whole, so that its patients"
            + " count once.");
  }

  /** What is not given says little of a paper that has an identifier or a title. */
  private static String known(Proposal proposal) {
    return proposal.signs().stream()
        .filter(sign -> sign.bearing() != Bearing.UNKNOWN)
        .map(Sign::sentence)
        .collect(Collectors.joining(" "));
  }

  private static String reasons(Proposal proposal) {
    return proposal.signs().stream().map(Sign::sentence).collect(Collectors.joining(" "));
  }

  /** What makes the doubt another one: what agrees, and not what is unknown or speaks against. */
  private static String told(Proposal proposal) {
    return proposal.verdict()
        + proposal.signs(Bearing.AGREES).stream()
            .map(Sign::sentence)
            .collect(Collectors.joining("|"));
  }
}
