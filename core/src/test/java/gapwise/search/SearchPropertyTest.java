package gapwise.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.EvidenceJson;
import gapwise.evidence.Study;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.MethodDetail;
import gapwise.evidence.vocabulary.Risk;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.search.SearchRequest.DefectMatch;
import gapwise.store.DocumentStore;
import gapwise.store.Write;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.ToIntFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The index answers as looking at every arm would, on invented studies drawn from a seed. */
class SearchPropertyTest {
  private static final int STUDIES = 90;
  private static final int REQUESTS = 60;

  @TempDir Path home;
  private DocumentStore store;
  private StudyIndex search;

  @AfterEach
  void close() {
    search.close();
    store.close();
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4})
  void filtersAndCountsAreThoseOfLookingAtEveryArm(long seed) {
    List<Study> studies = stored(seed);
    ByHand byHand = new ByHand(studies);
    Random random = new Random(seed + 1000);
    int answersWithArms = 0;
    for (int i = 0; i < REQUESTS; i++) {
      SearchRequest request = request(random);
      List<String> expected = byHand.arms(request);
      SearchAnswer answer = search.shown().search(request, StudySearch.Order.RELEVANCE, 0, 1000);
      assertEquals(new TreeSet<>(expected), new TreeSet<>(names(answer.hits())), request::toString);
      assertEquals(expected.size(), answer.arms(), request::toString);
      long distinct = expected.stream().map(name -> name.split(" ")[0]).distinct().count();
      assertEquals(distinct, answer.studies(), request::toString);
      assertEquals(byHand.patients(request), answer.patients(), request::toString);
      assertEquals(
          byHand.facets(request), facets(answer, SearchAnswer.Count::arms), request::toString);
      assertEquals(
          byHand.studiesOfFacets(request),
          facets(answer, SearchAnswer.Count::studies),
          request::toString);
      Map<String, Integer> without = new TreeMap<>();
      answer.facets().forEach(facet -> without.put(facet.filter(), facet.without()));
      assertEquals(byHand.without(request), without, request::toString);
      assertEquals(byHand.glances(request), glances(request), request::toString);
      assertEquals(
          notSaid(byHand, request),
          search.shown().lengthNotSaid(request, answer),
          request::toString);
      answersWithArms += expected.isEmpty() ? 0 : 1;
    }
    assertTrue(answersWithArms > REQUESTS / 3, "too few requests found anything to compare");
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {5, 6})
  void everyOrderHoldsTheSameArmsAndPagesJoinUp(long seed) {
    List<Study> studies = stored(seed);
    SearchRequest request = SearchRequest.EVERYTHING;
    for (StudySearch.Order order : StudySearch.Order.values()) {
      List<String> whole = names(search.shown().search(request, order, 0, 10_000).hits());
      List<String> paged = new ArrayList<>();
      for (int offset = 0; offset < whole.size(); offset += 7) {
        paged.addAll(names(search.shown().search(request, order, offset, 7).hits()));
      }
      assertEquals(whole, paged, order::name);
      assertEquals(new ByHand(studies).arms(request).size(), new HashSet<>(whole).size());
    }
    List<String> inOrder =
        studies.stream()
            .sorted(java.util.Comparator.comparing(Study::id))
            .flatMap(s -> s.arms().stream().map(a -> s.id() + " " + a.id()))
            .toList();
    assertEquals(inOrder, names(search.shown().everyArm(request)));
  }

  private static LengthNotSaid notSaid(ByHand byHand, SearchRequest request) {
    return request
        .lengthsOfPatients()
        .map(
            range ->
                new LengthNotSaid(
                    byHand.arms(request.withDefect(range, DefectMatch.ONE_SIDED)).size(),
                    byHand.arms(request.withDefect(range, DefectMatch.UNKNOWN)).size()))
        .orElse(LengthNotSaid.NONE);
  }

  /** What a visitor of all arms is shown, sorted; arms of a study must come together. */
  private List<String> glances(SearchRequest request) {
    List<String> shown = new ArrayList<>();
    List<String> studies = new ArrayList<>();
    search
        .shown()
        .eachArm(
            request,
            arm -> {
              shown.add(arm.toString());
              if (studies.isEmpty() || !studies.get(studies.size() - 1).equals(arm.studyId())) {
                studies.add(arm.studyId());
              }
            });
    assertEquals(new HashSet<>(studies).size(), studies.size(), "a study was left and met again");
    return shown.stream().sorted().toList();
  }

  /** Written in several transactions, a third of them again later, and some deleted. */
  private List<Study> stored(long seed) {
    store = DocumentStore.open(home, Clock.systemUTC());
    search = StudyIndex.open(home.resolve("index"), store, "study", message -> {});
    InventedStudies invented = new InventedStudies(seed);
    TreeMap<Integer, Study> kept = new TreeMap<>();
    for (int round = 0; round < 3; round++) {
      List<Write> writes = new ArrayList<>();
      for (int number = round; number < STUDIES; number += 1 + round) {
        Study study = invented.study(number);
        kept.put(number, study);
        writes.add(Write.put("study", study.id(), EvidenceJson.write(study)));
      }
      store.write(writes, "tester", "invented studies");
    }
    List<Write> deletions =
        IntStream.range(0, STUDIES)
            .filter(number -> number % 10 == 0)
            .mapToObj(number -> Write.delete("study", kept.remove(number).id()))
            .toList();
    store.write(deletions, "tester", "not wanted");
    assertEquals(store.lastChange(), search.shown().change());
    return List.copyOf(kept.values());
  }

  private static SearchRequest request(Random random) {
    Set<String> methods = new HashSet<>();
    Set<String> outcomes = new HashSet<>();
    Set<String> segments = new HashSet<>();
    Set<Bone> bones = EnumSet.noneOf(Bone.class);
    Set<YesOrNo> infected = EnumSet.noneOf(YesOrNo.class);
    Set<Design> designs = EnumSet.noneOf(Design.class);
    while (random.nextInt(3) == 0) {
      methods.add(Method.vocabulary().all().get(random.nextInt(5)).code());
    }
    while (random.nextInt(3) == 0) {
      outcomes.add(List.of("union", "refracture", "time-to-union", "cost").get(random.nextInt(4)));
    }
    while (random.nextInt(4) == 0) {
      segments.add(List.of("32", "33", "42", "43", "99").get(random.nextInt(5)));
    }
    while (random.nextInt(3) == 0) {
      bones.add(Bone.values()[random.nextInt(4)]);
    }
    while (random.nextInt(3) == 0) {
      infected.add(YesOrNo.values()[random.nextInt(4)]);
    }
    while (random.nextInt(3) == 0) {
      designs.add(Design.values()[random.nextInt(5)]);
    }
    Set<Risk> risks = EnumSet.noneOf(Risk.class);
    while (random.nextInt(4) == 0) {
      risks.add(Risk.values()[random.nextInt(5)]);
    }
    Set<MethodDetail> details = new HashSet<>();
    while (random.nextInt(3) == 0) {
      details.add(MethodDetail.find(InventedStudies.detail(random)).orElseThrow());
    }
    return new SearchRequest(
        "",
        methods,
        bones,
        segments,
        infected,
        new HowMade(designs, risks),
        outcomes,
        details,
        new YearRange(year(random), year(random)),
        random.nextInt(2) == 0 ? Optional.of(range(random)) : Optional.empty(),
        DefectMatch.values()[random.nextInt(DefectMatch.values().length)],
        random.nextInt(4) == 0
            ? OptionalDouble.of(6.0 * random.nextInt(6))
            : OptionalDouble.empty());
  }

  private static OptionalInt year(Random random) {
    return random.nextInt(4) == 0 ? OptionalInt.of(1988 + random.nextInt(10)) : OptionalInt.empty();
  }

  /** On the grid of the invented lengths, so that touching ends occur often. */
  private static LengthRange range(Random random) {
    double from = random.nextInt(120) / 10.0;
    return random.nextInt(4) == 0
        ? LengthRange.from(from)
        : new LengthRange(from, from + random.nextInt(30) / 10.0);
  }

  private static List<String> names(List<SearchAnswer.ArmHit> hits) {
    return hits.stream().map(hit -> hit.studyId() + " " + hit.armId()).toList();
  }

  private static Map<String, Map<String, Integer>> facets(
      SearchAnswer answer, ToIntFunction<SearchAnswer.Count> of) {
    Map<String, Map<String, Integer>> facets = new TreeMap<>();
    for (SearchAnswer.Facet facet : answer.facets()) {
      Map<String, Integer> counts = facets.computeIfAbsent(facet.filter(), f -> new TreeMap<>());
      facet.counts().forEach(count -> counts.put(count.code(), of.applyAsInt(count)));
    }
    return facets;
  }
}
