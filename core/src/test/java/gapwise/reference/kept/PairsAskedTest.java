package gapwise.reference.kept;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.Citation;
import gapwise.reference.format.Format;
import gapwise.reference.format.ReadRecord;
import gapwise.reference.format.ReferenceFile;
import gapwise.reference.format.ReferenceReader;
import gapwise.reference.kept.ReferenceDecision.Settled;
import gapwise.reference.pair.Standing;
import gapwise.reference.pair.Verdict;
import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What is asked of kept references, and what is not asked again. All papers are invented. */
class PairsAskedTest {
  private static final Instant NOW = Instant.parse("2031-02-03T04:05:06Z");
  private static final String PLACE =
      "AU  - Kell, Bo\nAU  - Ostrow, Ina\nPY  - 2001\nJO  - Imagined Bones\nVL  - 3\nSP  - 44\nEP  - 51\n";
  private static final String TITLE = "Nails for the broken forearm in growing children";

  private static List<KeptLine> lines(String text) throws IOException {
    List<KeptLine> lines = new ArrayList<>();
    ReferenceReader.read(
        ReferenceFile.of("one.ris", text),
        record -> {
          ReadRecord.Read read = (ReadRecord.Read) record;
          String id = Identity.id(read.reference(), Format.RIS, "one.ris", 0);
          lines.add(
              KeptLine.of(
                  new KeptReference(
                      id,
                      read.reference(),
                      List.of(
                          new RecordSource(
                              "load", "one.ris", Format.RIS, read.number(), read.line())))));
        });
    return lines;
  }

  private static String record(String id, String more) {
    return "TY  - JOUR\nID  - " + id + "\nTI  - " + TITLE + "\n" + PLACE + more + "ER  - \n";
  }

  private static ReferenceDecision decided(OpenPair pair, Settled settled) {
    return new ReferenceDecision(
        pair.first(), pair.second(), settled, "looked", "AB", NOW, pair.stoodOn());
  }

  private static List<OpenPair> open(Compared compared, Shelf shelf) {
    return PairsAsked.of(compared, shelf.decisions(), shelf.groups()).open();
  }

  @Test
  void aPairIsAskedUntilItIsSettledAndAgainWhenARecordChanges() throws IOException {
    for (Settled settled : Settled.values()) {
      List<KeptLine> lines = lines(record("a", "") + record("b", ""));
      Compared compared = Compared.of(lines, Map.of());
      List<OpenPair> open = open(compared, Shelf.of(lines, List.of()));
      assertEquals(1, open.size());
      assertEquals(Verdict.SAME, open.get(0).verdict());
      List<ReferenceDecision> decisions = List.of(decided(open.get(0), settled));
      assertEquals(List.of(), open(compared, Shelf.of(lines, decisions)));
      List<KeptLine> changed = lines(record("a", "") + record("b", "AB  - More is told now.\n"));
      List<OpenPair> again = open(Compared.of(changed, Map.of()), Shelf.of(changed, decisions));
      assertEquals(1, again.size(), settled.name());
      assertEquals(decisions, List.of(again.get(0).before().orElseThrow()));
    }
  }

  @Test
  void whatFollowsFromOtherDecisionsIsNotAsked() throws IOException {
    List<KeptLine> lines = lines(record("a", "") + record("b", "") + record("c", ""));
    Compared compared = Compared.of(lines, Map.of());
    List<OpenPair> open = open(compared, Shelf.of(lines, List.of()));
    assertEquals(3, open.size());
    List<ReferenceDecision> same =
        List.of(decided(open.get(0), Settled.SAME), decided(open.get(1), Settled.SAME));
    Shelf shelf = Shelf.of(lines, same);
    assertEquals(List.of(), open(compared, shelf));
    assertEquals(1, shelf.papers());
    List<ReferenceDecision> apart =
        List.of(decided(open.get(0), Settled.SAME), decided(open.get(1), Settled.DIFFERENT));
    assertEquals(List.of(), open(compared, Shelf.of(lines, apart)));
    assertEquals(2, Shelf.of(lines, apart).papers());
  }

  @Test
  void decisionsThatContradictEachOtherAreTold() throws IOException {
    List<KeptLine> lines = lines(record("a", "") + record("b", "") + record("c", ""));
    List<OpenPair> open = open(Compared.of(lines, Map.of()), Shelf.of(lines, List.of()));
    List<ReferenceDecision> decisions =
        List.of(
            decided(open.get(0), Settled.SAME),
            decided(open.get(1), Settled.SAME),
            decided(open.get(2), Settled.DIFFERENT));
    assertEquals(List.of(decisions.get(2)), Shelf.of(lines, decisions).groups().contradictions());
  }

  @Test
  void theFullestRecordLeadsItsGroup() throws IOException {
    List<KeptLine> lines =
        lines(
            record("a", "") + record("b", "AB  - Told.\nDO  - 10.5555/paper\n") + record("c", ""));
    Compared compared = Compared.of(lines, Map.of());
    List<ReferenceDecision> all = new ArrayList<>();
    open(compared, Shelf.of(lines, List.of())).forEach(p -> all.add(decided(p, Settled.SAME)));
    ReferenceGroups groups = Shelf.of(lines, all).groups();
    for (KeptLine line : lines) {
      assertEquals(lines.get(1).id(), groups.leading(line.id()));
      assertEquals(3, groups.of(line.id()).size());
    }
  }

  private static final String NOTICE =
      "TY  - JOUR\nID  - n\nTI  - Retraction: "
          + TITLE
          + "\nAU  - The editors\nPY  - 2004\nJO  - Imagined Bones\nVL  - 6\nSP  - 9\nDO  - 10.5555/notice\n"
          + "N1  - Retraction of: Imagined Bones. 2001;3:44-51. doi: 10.5555/paper\nER  - \n";

  private static Map<String, List<Standing>> standings(
      List<KeptLine> lines, Map<String, Citation> studies, List<ReferenceDecision> decisions) {
    Shelf shelf = Shelf.of(lines, decisions);
    return PairsAsked.of(Compared.of(lines, studies), decisions, shelf.groups()).standings();
  }

  @Test
  void aNoticeAmongKeptReferencesIsToldOfTheStudyItMeans() throws IOException {
    Citation citation =
        Citation.with(TITLE)
            .authors("Kell, Bo; Ostrow, Ina")
            .year(2001)
            .journal("Imagined Bones")
            .volume("3")
            .pages("44-51")
            .doi("10.5555/paper")
            .build();
    Map<String, Citation> studies = Map.of("kell-2001", citation);
    List<KeptLine> lines = lines(NOTICE);
    List<Standing> told = standings(lines, studies, List.of()).get("study:kell-2001");
    assertEquals(1, told.size());
    assertEquals(Standing.Kind.RETRACTED, told.get(0).kind());
    assertTrue(told.get(0).sentence().contains("10.5555/notice"), told.get(0).sentence());
    OpenPair pair = open(Compared.of(lines, studies), Shelf.of(lines, List.of())).get(0);
    assertEquals(Verdict.RELATED, pair.verdict());
    assertEquals("study:kell-2001", pair.second());
    assertEquals(Map.of(), standings(lines, studies, List.of(decided(pair, Settled.DIFFERENT))));
    assertEquals(1, standings(lines, studies, List.of(decided(pair, Settled.RELATED))).size());
  }

  @Test
  void studiesAloneAreNotComparedWithOneAnother() {
    Citation citation = Citation.with(TITLE).year(2001).doi("10.5555/paper").build();
    Compared compared = Compared.of(List.of(), Map.of("a", citation, "b", citation));
    assertEquals(List.of(), open(compared, Shelf.of(List.of(), List.of())));
  }

  @Test
  void theSearchFindsTheStartsOfWordsInAnySpelling() throws IOException {
    List<KeptLine> lines =
        lines(
            record("a", "") + "TY  - JOUR\nTI  - Wax\nAU  - Br\u00fcnn, Odo\nPY  - 2009\nER  - \n");
    Shelf shelf = Shelf.of(lines, List.of());
    assertEquals(2, shelf.search(" ").size());
    assertEquals("Wax", shelf.search("brunn 2009").get(0).brief().titles().main());
    assertEquals(TITLE, shelf.search("OSTR nails, imag").get(0).brief().titles().main());
    assertEquals(List.of(), shelf.search("ails"));
  }
}
