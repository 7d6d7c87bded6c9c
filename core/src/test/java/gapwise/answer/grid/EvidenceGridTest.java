package gapwise.answer.grid;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.answer.ComparisonsGraph;
import gapwise.answer.Edition;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.search.IndexedArm;
import gapwise.search.LengthNotSaid;
import gapwise.search.LooseWords;
import gapwise.search.SearchAnswer;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Counts made by hand on arms of our own invention. */
class EvidenceGridTest {
  private static final Method TRANSPORT = Method.of("bone-transport");
  private static final Method MEMBRANE = Method.of("induced-membrane");
  private static final Method SCAFFOLD = Method.of("printed-scaffold");
  private static final List<LengthRange> BANDS =
      List.of(new LengthRange(0, 4), new LengthRange(4, 8), LengthRange.from(8));

  private static final StudySearch ARMS =
      arms(
          arm("s1", "bone-transport", Design.RETROSPECTIVE_SERIES, 4, 10),
          arm("s2", "bone-transport", Design.RANDOMISED, 5, 20),
          arm("s2", "bone-transport", Design.RANDOMISED, 6, 15),
          arm("s2", "induced-membrane", Design.RANDOMISED, 9, 15),
          arm("s3", "induced-membrane", Design.CASE_REPORT, -1, 1),
          arm("s4", "printed-scaffold", Design.SERIES, 3.9, 39));

  private static IndexedArm arm(
      String study, String method, Design design, double centimetres, int patients) {
    return arm(study, method, design, Optional.empty(), centimetres, patients);
  }

  private static IndexedArm arm(
      String study,
      String method,
      Design design,
      Optional<YesOrNo> infected,
      double centimetres,
      int patients) {
    return new IndexedArm(
        study,
        method,
        Optional.of(design),
        infected,
        centimetres < 0 ? OptionalDouble.empty() : OptionalDouble.of(centimetres),
        OptionalInt.of(patients),
        Optional.empty());
  }

  private static StudySearch arms(IndexedArm... arms) {
    return new StudySearch() {
      @Override
      public SearchAnswer search(SearchRequest request, Order order, int offset, int limit) {
        throw new UnsupportedOperationException("counts need no list");
      }

      @Override
      public List<SearchAnswer.ArmHit> everyArm(SearchRequest request) {
        throw new UnsupportedOperationException("counts need no list");
      }

      @Override
      public List<SearchAnswer.ArmHit> everyArmOrNotSaid(SearchRequest request) {
        throw new UnsupportedOperationException("counts need no list");
      }

      @Override
      public SearchAnswer eachArm(SearchRequest request, Consumer<IndexedArm> visitor) {
        List.of(arms).forEach(visitor);
        return new SearchAnswer(
            arms.length, 0, 0, List.of(), List.of(), Optional.empty(), Optional.empty());
      }

      @Override
      public LengthNotSaid lengthNotSaid(SearchRequest request, SearchAnswer answer) {
        throw new UnsupportedOperationException("counts need no list");
      }

      @Override
      public int count(SearchRequest request) {
        return arms.length;
      }

      @Override
      public Optional<LooseWords> looseWords(String text) {
        throw new UnsupportedOperationException("counts need no list");
      }

      @Override
      public Optional<String> didYouMean(SearchRequest request) {
        return Optional.empty();
      }

      @Override
      public boolean holdsInvented() {
        return true;
      }

      @Override
      public long change() {
        return 1;
      }
    };
  }

  private static HeadToHead pairs(StudySearch search) {
    HeadToHead.Finding finding = new HeadToHead.Finding();
    search.eachArm(SearchRequest.EVERYTHING, finding);
    return finding.found();
  }

  private static EvidenceGrid grid() {
    return EvidenceGrid.of(ARMS, SearchRequest.EVERYTHING, BANDS);
  }

  @Test
  void eachAnswerOnInfectionHasItsOwnGridAndSilenceNone() {
    InfectionGrids.Sum sum = new InfectionGrids.Sum(BANDS, List.of(YesOrNo.values()));
    arms(
            arm("s1", "bone-transport", Design.SERIES, Optional.of(YesOrNo.YES), 5, 10),
            arm("s1", "induced-membrane", Design.SERIES, Optional.of(YesOrNo.NO), 9, 7),
            arm("s2", "bone-transport", Design.SERIES, Optional.of(YesOrNo.YES), -1, 4),
            arm("s3", "bone-transport", Design.SERIES, Optional.of(YesOrNo.MIXED), 5, 2),
            arm("s4", "bone-transport", Design.SERIES, Optional.empty(), 5, 1))
        .eachArm(SearchRequest.EVERYTHING, sum);
    InfectionGrids grids = sum.grids();
    assertEquals(24, grids.all().all().all().patients());
    EvidenceGrid infected = grids.apart().get(YesOrNo.YES);
    assertEquals(List.of(TRANSPORT), List.copyOf(infected.rows().keySet()));
    assertEquals(10, infected.row(TRANSPORT).banded().get(1).patients());
    assertEquals(4, infected.row(TRANSPORT).unsized().patients());
    assertEquals(
        List.of(7L, 2L, 0L),
        Stream.of(YesOrNo.NO, YesOrNo.MIXED, YesOrNo.UNCLEAR)
            .map(answer -> grids.apart().get(answer).all().all().patients())
            .toList());
  }

  @Test
  void answersThatAreNotToldApartCountAmongAllAlone() {
    InfectionGrids.Sum sum = new InfectionGrids.Sum(BANDS, List.of(YesOrNo.NO));
    arms(
            arm("s1", "bone-transport", Design.SERIES, Optional.of(YesOrNo.YES), 5, 10),
            arm("s2", "bone-transport", Design.SERIES, Optional.of(YesOrNo.NO), 5, 7))
        .eachArm(SearchRequest.EVERYTHING, sum);
    InfectionGrids grids = sum.grids();
    assertEquals(17, grids.all().all().all().patients());
    assertEquals(Set.of(YesOrNo.NO), grids.apart().keySet());
    assertEquals(7, grids.of(YesOrNo.NO).all().all().patients());
  }

  @Test
  void anArmOnTheEdgeOfTwoSizesStandsInTheUpperOne() {
    assertTrue(grid().row(TRANSPORT).banded().get(0).isNothing());
    assertEquals(3, grid().row(TRANSPORT).banded().get(1).arms());
  }

  @Test
  void aStudyOfSeveralArmsCountsOnceInAPlaceAndItsDesignOnce() {
    Tally tally = grid().row(TRANSPORT).banded().get(1);
    assertEquals(
        new Tally(2, 3, 45, Map.of(Design.RANDOMISED, 1, Design.RETROSPECTIVE_SERIES, 1)), tally);
    assertEquals(Optional.of(Design.RANDOMISED), tally.best());
    assertEquals(4, grid().all().all().studies());
    assertEquals(100, grid().all().all().patients());
  }

  @Test
  void anArmWithoutAMiddleLengthStandsInNoSize() {
    assertEquals(1, grid().row(MEMBRANE).unsized().arms());
    assertEquals(2, grid().row(MEMBRANE).all().arms());
  }

  @Test
  void theEmptiestPlaceIsThatWhereMostWouldBeExpected() {
    List<EmptyPlace> places = EmptyPlace.of(grid(), grid(), List.of(TRANSPORT, MEMBRANE, SCAFFOLD));
    // of 99 patients with a size, 39 stand below 4 cm, 45 at 4 to 8, 15 above
    assertEquals(4, places.size());
    assertEquals(SCAFFOLD, places.get(0).method());
    assertEquals(LengthRange.from(4), places.get(0).range());
    assertEquals(39.0 * 60 / 99, places.get(0).expected(), 1e-12);
    assertEquals(TRANSPORT, places.get(1).method());
    assertEquals(45.0 * 39 / 99, places.get(1).expected(), 1e-12);
  }

  @Test
  void methodsOfOneStudyAreAPairWithThePatientsOfBoth() {
    HeadToHead found = pairs(ARMS);
    assertEquals(1, found.studies());
    assertEquals(
        List.of(
            new HeadToHead.Pair(
                TRANSPORT, MEMBRANE, 50, Map.of(Design.RANDOMISED, 1), List.of("s2"))),
        found.pairs());
    assertEquals(new HeadToHead.Member(1, 35), found.members().get(TRANSPORT));
    assertEquals(
        List.of(
            Map.entry(TRANSPORT, List.of(SCAFFOLD)),
            Map.entry(MEMBRANE, List.of(SCAFFOLD)),
            Map.entry(SCAFFOLD, List.of(TRANSPORT, MEMBRANE))),
        found.missing(List.of(TRANSPORT, MEMBRANE, SCAFFOLD)));
  }

  @Test
  void whereNoStudyHoldsTwoMethodsThereIsNoGraph() {
    HeadToHead found = pairs(arms(arm("s1", "bone-transport", Design.SERIES, 4, 10)));
    assertTrue(
        ComparisonsGraph.of(found, "Pairs", "None.", Edition.ofProgram("test"), true, List.of())
            .isEmpty());
  }
}
