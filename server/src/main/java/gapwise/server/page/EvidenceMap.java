package gapwise.server.page;

import gapwise.evidence.LengthRange;
import gapwise.evidence.Method;
import gapwise.figure.Span;
import gapwise.figure.SpanDrawing;
import gapwise.search.SearchAnswer;
import gapwise.search.SearchRequest;
import gapwise.search.SearchRequest.DefectMatch;
import gapwise.search.StudySearch;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How many groups of patients there are of each method at each size of defect, by their mean or
 * median, so that empty places show.
 *
 * @param bands sizes in order
 * @param lines methods of which there is any group
 */
public record EvidenceMap(List<Column> bands, List<Line> lines) {
  private static final double[] MIDDLES = {1, 3, 5, 7, 10, 14};
  private static final double REACH_CENTIMETRES = 15;
  private static final double WIDTH = 92;

  /** A size with a bone drawn to scale. */
  public record Column(String label, String span) {}

  /**
   * A method.
   *
   * @param unsized groups whose paper gives no middle length
   */
  public record Line(Method method, List<Cell> cells, Cell unsized, Cell all) {}

  /**
   * A number of groups.
   *
   * @param depth 0 for none, then 1 to 4 for more
   */
  public record Cell(int arms, String href, int depth) {}

  static EvidenceMap of(StudySearch search) {
    List<Map<String, Integer>> byBand = new ArrayList<>();
    for (double[] band : FilterForm.BANDS) {
      byBand.add(methods(search, Optional.of(new LengthRange(band[0], band[1]))));
    }
    Map<String, Integer> all = methods(search, Optional.empty());
    List<Line> lines =
        Method.vocabulary().all().stream()
            .filter(method -> all.getOrDefault(method.code(), 0) > 0)
            .map(method -> line(method, byBand, all.get(method.code())))
            .toList();
    return new EvidenceMap(columns(), lines);
  }

  private static List<Column> columns() {
    List<Column> columns = new ArrayList<>();
    for (int i = 0; i < MIDDLES.length; i++) {
      Span span = new Span.Mean(MIDDLES[i], Optional.empty());
      String drawing = SpanDrawing.draw(span, REACH_CENTIMETRES, WIDTH).inline();
      columns.add(new Column(FilterForm.bandLabel(FilterForm.BANDS.get(i)), drawing));
    }
    return columns;
  }

  private static Line line(Method method, List<Map<String, Integer>> byBand, int all) {
    Address ofMethod = new Address(Map.of("method", List.of(method.code())));
    List<Cell> cells = new ArrayList<>();
    int sized = 0;
    for (int i = 0; i < byBand.size(); i++) {
      int arms = byBand.get(i).getOrDefault(method.code(), 0);
      sized += arms;
      Address address =
          FilterForm.banded(ofMethod, FilterForm.BANDS.get(i)).with("match", "centre");
      cells.add(cell(arms, address));
    }
    return new Line(method, cells, cell(Math.max(0, all - sized), ofMethod), cell(all, ofMethod));
  }

  private static Cell cell(int arms, Address address) {
    int depth = arms == 0 ? 0 : arms < 3 ? 1 : arms < 6 ? 2 : arms < 12 ? 3 : 4;
    return new Cell(arms, address.at(StudiesPage.PATH), depth);
  }

  private static Map<String, Integer> methods(StudySearch search, Optional<LengthRange> range) {
    SearchRequest everything = SearchRequest.EVERYTHING;
    SearchRequest request =
        new SearchRequest(
            "",
            everything.methods(),
            everything.bones(),
            everything.segments(),
            everything.infected(),
            everything.designs(),
            everything.outcomes(),
            everything.yearFrom(),
            everything.yearTo(),
            range.map(EvidenceMap::halfOpen),
            DefectMatch.CENTRE);
    SearchAnswer answer = search.search(request, StudySearch.Order.YEAR_DESCENDING, 0, 0);
    Map<String, Integer> counts = new HashMap<>();
    answer.facets().stream()
        .filter(facet -> facet.filter().equals("methods"))
        .forEach(facet -> facet.counts().forEach(c -> counts.put(c.code(), c.arms())));
    return counts;
  }

  /** Without its upper end, so that a group of exactly 4 cm stands in one band only. */
  private static LengthRange halfOpen(LengthRange range) {
    double to = range.toCentimetres();
    return new LengthRange(range.fromCentimetres(), Double.isInfinite(to) ? to : Math.nextDown(to));
  }
}
