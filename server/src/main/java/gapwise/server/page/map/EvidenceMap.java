package gapwise.server.page.map;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.grid.EvidenceGrid;
import gapwise.answer.grid.Tally;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Method;
import gapwise.figure.drawing.Svg;
import gapwise.figure.span.Span;
import gapwise.figure.span.SpanDrawing;
import gapwise.sentence.Counted;
import gapwise.server.address.Address;
import gapwise.server.address.Filters;
import gapwise.server.address.LengthBand;
import gapwise.server.address.PagePaths;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * How much is recorded of each method at each size of defect, by the mean or median of each group
 * of patients, so that empty places show; each place with the address of its studies.
 *
 * @param bands sizes in order
 * @param lines methods
 * @param total all methods together
 * @param most patients of the place of a method that has most
 */
public record EvidenceMap(List<Column> bands, List<Line> lines, Places total, long most) {
  /** The sizes, the upper end of each belonging to the next. */
  static final List<LengthRange> RANGES =
      LengthBand.USUAL.stream().map(LengthBand::lengths).toList();

  private static final double[] MIDDLES = {1, 3, 5, 7, 10, 14};
  private static final double REACH_CENTIMETRES = 15;
  private static final double WIDTH = 92;

  private static final List<Column> COLUMNS = columns();

  private static final String METHOD = "method";

  private static final Address EVERY_SIZE = new Address(Map.of());
  private static final Address UNSIZED = EVERY_SIZE.with("match", Filters.UNSIZED);

  /** What the address of a place has for its size, in the order of the sizes. */
  private static final List<Address> SIZES =
      LengthBand.USUAL.stream()
          .map(band -> band.in(EVERY_SIZE).with("match", Filters.BAND))
          .toList();

  /** What an address has for each method, and for each place of it in the order of the sizes. */
  private static final Map<Method, OfMethod> OF_METHODS =
      Method.vocabulary().all().stream()
          .collect(Collectors.toUnmodifiableMap(method -> method, EvidenceMap::ofMethod));

  /**
   * What the addresses of the places of a line have beside the filters; a page has some hundred, so
   * each is written once.
   */
  private record OfMethod(Address all, Address unsized, List<Address> sizes) {}

  /** A size with a bone drawn to scale. */
  public record Column(String label, String span) {}

  /** A method. */
  public record Line(Method method, Places places) {}

  /**
   * The places of one method, or of all.
   *
   * @param unsized groups whose paper gives no middle length
   * @param all groups of every size and of none
   */
  public record Places(List<Cell> banded, Cell unsized, Cell all) {}

  /**
   * One place.
   *
   * @param href address of its studies; empty for none
   * @param depth 0 for none, then 1 to 4 for more
   */
  public record Cell(Tally tally, String href, int depth, Kinds kinds) {
    static final Cell NONE = new Cell(Tally.NOTHING, "", 0, Kinds.NONE);

    /** Whether nothing is recorded. */
    public boolean none() {
      return tally.isNothing();
    }

    /** Such as "3 studies". */
    public String studies() {
      return Counted.of(tally.studies(), "study", "studies");
    }

    /** Such as "61 patients". */
    public String patients() {
      return tally.patients() == 0
          ? say("page.patients-not-given")
          : Counted.of(tally.patients(), "patient", "patients");
    }
  }

  /**
   * The map of a grid.
   *
   * @param methods the lines, in order
   * @param filters what narrows it, without method and size
   */
  static EvidenceMap of(EvidenceGrid grid, List<Method> methods, Address filters) {
    Address rest = withoutMethods(filters);
    List<Line> lines =
        methods.stream()
            .map(method -> new Line(method, places(grid, grid.row(method), rest, address(method))))
            .toList();
    OfMethod every = new OfMethod(EVERY_SIZE, UNSIZED, SIZES);
    return new EvidenceMap(COLUMNS, lines, places(grid, grid.all(), filters, every), most(lines));
  }

  /** Address of what is recorded of a method at any size. */
  static String studies(Address filters, Method method) {
    return withoutMethods(filters).at(PagePaths.STUDIES, address(method).all());
  }

  private static Address withoutMethods(Address filters) {
    return filters.without(List.of(METHOD));
  }

  private static OfMethod address(Method method) {
    return Optional.ofNullable(OF_METHODS.get(method)).orElseGet(() -> ofMethod(method));
  }

  private static OfMethod ofMethod(Method method) {
    Address all = EVERY_SIZE.with(METHOD, method.code());
    return new OfMethod(
        all,
        all.with("match", Filters.UNSIZED),
        LengthBand.USUAL.stream().map(band -> band.in(all).with("match", Filters.BAND)).toList());
  }

  /** How much fits on a place, half its width in units of its drawing. */
  private static final double LARGEST = 15;

  /** Radius of the dot of a place, whose area grows with its patients; small ones stay seen. */
  public String radius(Cell cell) {
    double share = most == 0 ? 0 : Math.sqrt(cell.tally().patients() / (double) most);
    return Svg.n(Math.max(2, LARGEST * share));
  }

  private static long most(List<Line> lines) {
    return lines.stream()
        .map(Line::places)
        .flatMap(places -> Stream.concat(places.banded().stream(), Stream.of(places.unsized())))
        .mapToLong(cell -> cell.tally().patients())
        .max()
        .orElse(0);
  }

  private static List<Column> columns() {
    List<Column> columns = new ArrayList<>();
    for (int i = 0; i < MIDDLES.length; i++) {
      Span span = new Span.Mean(MIDDLES[i], Optional.empty());
      String drawing = SpanDrawing.draw(span, REACH_CENTIMETRES, WIDTH).inline();
      columns.add(new Column(LengthBand.USUAL.get(i).label(), drawing));
    }
    return List.copyOf(columns);
  }

  private static Places places(
      EvidenceGrid grid, EvidenceGrid.Row row, Address address, OfMethod own) {
    List<Cell> cells = new ArrayList<>();
    for (int i = 0; i < grid.bands().size(); i++) {
      cells.add(cell(row.banded().get(i), address, own.sizes().get(i)));
    }
    return new Places(
        List.copyOf(cells),
        cell(row.unsized(), address, own.unsized()),
        cell(row.all(), address, own.all()));
  }

  /** Only places where something is recorded have studies to go to. */
  private static Cell cell(Tally tally, Address studies, Address place) {
    if (tally.isNothing()) {
      return Cell.NONE;
    }
    int arms = tally.arms();
    int depth = arms < 3 ? 1 : arms < 6 ? 2 : arms < 12 ? 3 : 4;
    return new Cell(tally, studies.at(PagePaths.STUDIES, place), depth, Kinds.of(tally));
  }
}
