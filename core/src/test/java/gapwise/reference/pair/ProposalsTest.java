package gapwise.reference.pair;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.Citation;
import gapwise.reference.format.ReferenceFile;
import gapwise.reference.testing.InventedSearches;
import gapwise.reference.testing.MeasuredSearches;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Proposals over several files; all records are invented. */
class ProposalsTest {
  private static final String PAPER =
      "TY  - JOUR\n"
          + "ID  - p\n"
          + "AU  - Kell, Bo\n"
          + "AU  - Ostrow, Ina\n"
          + "TI  - Nails for the broken forearm in growing children\n"
          + "JO  - Imagined Bones\n"
          + "PY  - 2001\n"
          + "VL  - 3\n"
          + "SP  - 44\n"
          + "EP  - 51\n"
          + "DO  - 10.5555/paper\n"
          + "ER  - \n";

  @Test
  void ofInventedSearchesNoPairIsWronglyTheSameAndFewAreMissed() throws IOException {
    MeasuredSearches measured = MeasuredSearches.of(new InventedSearches(400, 11));
    assertEquals(0, measured.falseSame(), measured.examples().toString());
    assertTrue(measured.falseOther() <= 1, measured.examples().toString());
    assertTrue(measured.copiesSame() >= 0.95 * measured.copies(), measured.toString());
    assertTrue(
        measured.copiesSame() + measured.copiesOtherwise() >= 0.99 * measured.copies(),
        measured.toString());
    assertTrue(measured.relativesFound() >= 0.97 * measured.relatives(), measured.toString());
  }

  @Test
  void aPaperIsRetractedWhereverItStandsAndTheNoticeIsNot() throws IOException {
    String notice =
        "PMID- 90000002\n"
            + "TI  - Retraction: Nails for the broken forearm in growing children.\n"
            + "DP  - 2004\n"
            + "PT  - Retraction of Publication\n"
            + "ROF - Imagined Bones. 2001;3:44-51. doi: 10.5555/paper\n"
            + "JT  - Imagined Bones\n"
            + "SO  - x\n";
    ReferenceProposals proposals =
        ReferenceProposals.of(
            List.of(
                ReferenceFile.of("one.ris", PAPER),
                ReferenceFile.of(
                    "two.ris", PAPER.replace("DO  - 10.5555/paper\n", "").replace("p\n", "q\n")),
                ReferenceFile.of("notice.txt", notice)));
    assertEquals(
        List.of("one:p", "two:q"),
        proposals.standings().stream()
            .filter(standing -> standing.kind() == Standing.Kind.RETRACTED)
            .map(standing -> standing.paper().label())
            .sorted()
            .collect(Collectors.toList()));
    assertTrue(
        proposals.standings().get(0).sentence().contains("notice:90000002"),
        proposals.standings().toString());
  }

  @Test
  void filesAreHeldAgainstTheEvidenceBase() throws IOException {
    Citation citation =
        Citation.with("Nails for the broken forearm in growing children")
            .authors("Kell, B.; Ostrow, I.")
            .year(2001)
            .journal("Imagined Bones")
            .volume("3")
            .pages("44-51")
            .build();
    ReferenceProposals proposals =
        ReferenceProposals.of(
            List.of(ReferenceFile.of("one.ris", PAPER)), Map.of("kell-2001", citation));
    assertEquals(1, proposals.pairs().size());
    assertEquals(Verdict.SAME, proposals.pairs().get(0).verdict());
    assertEquals("evidence base:kell-2001", proposals.pairs().get(0).first().label());
  }

  @Test
  void reasonsAreSentences() throws IOException {
    ReferenceProposals proposals =
        ReferenceProposals.of(
            List.of(
                ReferenceFile.of("one.ris", PAPER),
                ReferenceFile.of("one.txt", PAPER.replace("2001", "2002"))));
    ProposedPair pair = proposals.pairs().get(0);
    assertEquals("one.ris:p", pair.first().label());
    assertEquals("one.txt:p", pair.second().label());
    assertEquals(
        List.of(
            "Both have the DOI 10.5555/paper.",
            "The titles are the same.",
            "2 of 2 authors agree.",
            "They agree in journal, volume and first page and differ in year."),
        pair.reasons());
  }
}
