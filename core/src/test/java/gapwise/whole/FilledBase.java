package gapwise.whole;

import gapwise.cohort.CohortDecision;
import gapwise.cohort.DecisionJson;
import gapwise.curation.EvidenceBase;
import gapwise.curation.ScreeningBase;
import gapwise.decision.certainty.Domain;
import gapwise.decision.certainty.Judgement;
import gapwise.demonstration.DemonstrationEvidence;
import gapwise.evidence.Study;
import gapwise.problem.Problem;
import gapwise.screening.Choice;
import gapwise.screening.Protocol;
import gapwise.screening.Reader;
import gapwise.screening.Stage;
import gapwise.screening.Vote;
import gapwise.store.DocumentStore;
import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** A base that holds something of every sort, all of it invented. */
final class FilledBase {
  static final Instant NOW = Instant.parse("2031-02-03T04:05:06.789Z");

  private FilledBase() {}

  /** Studies, one of them changed and one withdrawn, decisions, choices and a judgement. */
  static void fill(DocumentStore store) {
    List<Study> studies = DemonstrationEvidence.studies().subList(0, 12);
    EvidenceBase base = new EvidenceBase(store);
    base.saveAll(
        studies.iterator(),
        "Ann \u00c5",
        "first \u201cimport\u201d",
        List.of(new Problem("sheet arms, row 3", "odd-value", "It is odd.")));
    base.save(studies.get(1), "bo", "read again", 1);
    base.remove(studies.get(2).id(), "bo", "retracted", 1);
    CohortDecision shared =
        new CohortDecision(
            "aster-2001",
            "briar-2002",
            CohortDecision.Settled.SEPARATE,
            "other towns",
            "bo",
            NOW,
            Optional.empty(),
            new TreeMap<>(),
            "x");
    base.settle(shared.key(), DecisionJson.write(shared), "bo", "other towns");
    Map<Domain, Integer> levels = new EnumMap<>(Domain.class);
    for (Domain domain : Domain.values()) {
      levels.put(domain, 1);
    }
    Judgement judgement = new Judgement(levels, "few patients", List.of("aster-2001 1"));
    base.judge("a".repeat(64), judgement.json(), "ann", "few patients", 0);
    ScreeningBase screening = new ScreeningBase(store);
    screening.keep(Protocol.USUAL, "ann", "agreed", 0);
    screening.vote(
        new Vote(
            "ref-00000000000000aa",
            Stage.TITLE,
            new Reader("AB"),
            Choice.KEEP,
            Optional.empty(),
            NOW));
  }
}
