package gapwise.cohort;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.cohort.CohortDecision.Settled;
import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.BoneCount;
import gapwise.evidence.Citation;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.Study;
import gapwise.evidence.StudyBuilder;
import gapwise.evidence.unit.PartialDate;
import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Method;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What is proposed of two records, and what a decision leaves to ask. All studies are invented. */
class OverlapSearchTest {

  private static StudyBuilder study(String id, String hospital, String authors, String years) {
    String[] span = years.split("-");
    return Study.with(id, Citation.with("Series " + id).authors(authors).year(2015).build())
        .centres(hospital.isEmpty() ? List.of() : List.of(hospital))
        .recruitmentFrom(PartialDate.parse(span[0]).orElseThrow())
        .recruitmentTo(PartialDate.parse(span[1]).orElseThrow())
        .arms(List.of(arm("autograft", Bone.TIBIA)));
  }

  private static Arm arm(String method, Bone bone) {
    return Arm.with("A", MethodUsed.of(Method.of(method)))
        .baseline(
            Baseline.with()
                .patients(20)
                .bones(List.of(new BoneCount(bone, OptionalInt.of(20))))
                .build())
        .build();
  }

  private static List<Proposal> proposed(Study... studies) {
    OverlapSearch search = new OverlapSearch();
    Stream.of(studies).forEach(search::add);
    return search.find().proposals();
  }

  private static final Study ONE =
      study("one", "Drobba Clinic", "Abbard A; Beffling B; Cordis C", "2003-2009").build();
  private static final Study TWO =
      study("two", "Clinic of Drobba", "Beffling BE; Abbard A; Dunolund D", "2005-2012").build();

  @Test
  void oneHospitalTeamTimeAndMethodIsProposedWithEveryReason() {
    Proposal pair = proposed(TWO, ONE).get(0);
    assertEquals(Verdict.OVERLAPPING, pair.verdict());
    assertEquals("one", pair.first().toString());
    assertEquals(
        List.of(Fact.HOSPITAL, Fact.TEAM, Fact.YEARS, Fact.METHOD),
        pair.signs(Bearing.AGREES).stream().map(Sign::fact).toList());
    assertEquals(List.of(), pair.signs(Bearing.SPEAKS_AGAINST));
    assertTrue(pair.signs().get(1).sentence().contains("2 stand in both"), pair.toString());
  }

  @Test
  void whatNoPatientCanSatisfyIsSilent() {
    Study otherBone = TWO.but().arms(List.of(arm("autograft", Bone.FEMUR))).build();
    Study otherMethod = TWO.but().arms(List.of(arm("allograft", Bone.TIBIA))).build();
    Study later = study("two", "Clinic of Drobba", "Abbard A; Beffling B", "2010-2013").build();
    assertEquals(List.of(), proposed(ONE, otherBone));
    assertEquals(List.of(), proposed(ONE, otherMethod));
    assertEquals(List.of(), proposed(ONE, later));
  }

  @Test
  void whatPapersCannotTellIsOnlyPossibleAndSaysWhatIsMissing() {
    Study unnamed = study("two", "", "Beffling BE; Abbard A; Dunolund D", "2005-2012").build();
    Proposal pair = proposed(ONE, unnamed).get(0);
    assertEquals(Verdict.POSSIBLE, pair.verdict());
    assertEquals(
        List.of(Fact.HOSPITAL), pair.signs(Bearing.UNKNOWN).stream().map(Sign::fact).toList());
    Study strangers = study("two", "Drobba Clinic", "Estova E; Fennis F", "2005-2012").build();
    assertEquals(Verdict.POSSIBLE, proposed(ONE, strangers).get(0).verdict());
  }

  @Test
  void whatARecordStatesIsNotProposed() {
    assertEquals(List.of(), proposed(ONE, TWO.but().sameStudyAs(List.of("one")).build()));
    assertEquals(List.of(), proposed(ONE, TWO.but().overlapSuspectedWith(List.of("one")).build()));
    assertEquals(
        List.of(), proposed(ONE.but().cohort("c").build(), TWO.but().cohort("C ").build()));
  }

  @Test
  void theOrderOfStudiesChangesNothing() {
    Study third = study("three", "Drobba Clinic", "Abbard A; Cordis C", "2004-2008").build();
    assertEquals(proposed(ONE, TWO, third), proposed(third, TWO, ONE));
    assertEquals(3, proposed(ONE, TWO, third).size());
  }

  @Test
  void studiesThatAreNotNearChangeNothing() {
    Study far = study("far", "Quomore Hospital", "Xenis X; Yardling Y", "2003-2009").build();
    assertTrue(OverlapSearch.near(List.of(ONE)).test(TWO));
    assertFalse(OverlapSearch.near(List.of(ONE)).test(far));
    assertEquals(proposed(ONE, TWO), proposed(ONE, TWO, far));
  }

  private static CohortDecision decided(Proposal pair, Settled settled) {
    return new CohortDecision(
        pair.first().toString(),
        pair.second().toString(),
        settled,
        "asked the authors",
        "tester",
        Instant.parse("2020-01-02T03:04:05Z"),
        Optional.empty(),
        new TreeMap<>(
            settled == Settled.OVERLAPPING ? Map.of("union", "two") : Map.<String, String>of()),
        pair.stoodOn());
  }

  private static List<Proposal> left(CohortDecision decision, Study... studies) {
    OverlapSearch search = new OverlapSearch();
    Stream.of(studies).forEach(search::add);
    return search.find(List.of(decision)).proposals();
  }

  @Test
  void twoHeldApartAreAskedAgainOnlyOnceARecordChangesInWhatTheProposalStoodOn() {
    Proposal pair = proposed(ONE, TWO).get(0);
    CohortDecision apart = decided(pair, Settled.SEPARATE);
    assertEquals(List.of(), left(apart, ONE, TWO));
    Study noted = TWO.but().note("read again").funding("none").build();
    assertEquals(List.of(), left(apart, ONE, noted), "a note says nothing of the patients");
    Study moved = TWO.but().recruitmentTo(PartialDate.parse("2011").orElseThrow()).build();
    assertEquals(1, left(apart, ONE, moved).size());
    assertNotEquals(pair.stoodOn(), left(apart, ONE, moved).get(0).stoodOn());
  }

  @Test
  void twoThatAreLinkedAreNotAskedAgainAndWhatCouldNotBeToldStaysPossible() {
    Proposal pair = proposed(ONE, TWO).get(0);
    assertEquals(List.of(), left(decided(pair, Settled.OVERLAPPING), ONE, TWO));
    assertEquals(
        Verdict.POSSIBLE, left(decided(pair, Settled.NOT_KNOWN), ONE, TWO).get(0).verdict());
  }

  @Test
  void aDecisionIsReadAsItWasWrittenUnderTheKeyOfItsPair() {
    Proposal pair = proposed(ONE, TWO).get(0);
    CohortDecision decision = decided(pair, Settled.OVERLAPPING);
    assertEquals(decision, DecisionJson.read(DecisionJson.write(decision)));
    assertEquals(pair.key(), decision.key());
    assertEquals("one+two", decision.key());
  }
}
