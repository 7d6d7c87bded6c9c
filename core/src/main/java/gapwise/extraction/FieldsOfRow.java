package gapwise.extraction;

import static gapwise.sentence.Sentences.say;

import gapwise.exchange.Template;
import gapwise.exchange.TemplateColumn;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The fields of two rows that tell of the same: those that differ and those that are alike.
 *
 * @param differences what differs
 * @param alike what both filled alike
 */
record FieldsOfRow(List<Difference> differences, List<Compared.Alike> alike) {
  /** Where a number stands and the words around it go with the number, and are not settled. */
  static final Set<String> BESIDE = Set.of("place", "words");

  /** What the program or the sheet says, and no person read. */
  private static final Set<String> NEVER =
      Set.of(Template.STUDY, Template.READINGS, "place", "words", "marks");

  /** Fields of a whole row of one person that are shown for it. */
  private static final int MOST_SHOWN = 6;

  static FieldsOfRow of(RowPair pair) {
    ReadRow first = pair.first().orElseThrow();
    ReadRow second = pair.second().orElseThrow();
    if (pair.sheet().equals(Template.CURVES)) {
      return curve(pair, first, second);
    }
    List<Difference> differences = new ArrayList<>();
    List<Compared.Alike> alike = new ArrayList<>();
    for (TemplateColumn column : Template.columns(pair.sheet())) {
      String one = first.text(column.name());
      String other = second.text(column.name());
      if (!isRead(pair.sheet(), column.name()) || (one.isEmpty() && other.isEmpty())) {
        continue;
      }
      if (one.equals(other)) {
        alike.add(new Compared.Alike(pair, column, one));
      } else {
        differences.add(
            new Difference(
                pair.key() + "." + column.name(),
                pair,
                Optional.of(column),
                value(first, column),
                value(second, column),
                together(pair, column.name())));
      }
    }
    return new FieldsOfRow(differences, alike);
  }

  /** Whether a field is read from the paper by a person. */
  static boolean isRead(String sheet, String column) {
    boolean ofJudge =
        sheet.equals(Template.APPRAISAL) && (column.equals("by") || column.equals("on"));
    boolean howFar = sheet.equals(Template.STUDIES) && column.equals("status");
    return !NEVER.contains(column) && !ofJudge && !howFar;
  }

  private static Difference.Value value(ReadRow row, TemplateColumn column) {
    String unit =
        Units.of(row.sheet(), column.name())
            .filter(name -> column.number())
            .map(row::text)
            .orElse("");
    return new Difference.Value(
        row.text(column.name()),
        unit,
        row.text("place"),
        row.text("words"),
        row.reading(column.name()));
  }

  /** The unit of a number, where it differs; empty text where it does not, or there is none. */
  private static String together(RowPair pair, String column) {
    String unit = Units.of(pair.sheet(), column).orElse("");
    boolean other =
        !unit.isEmpty()
            && !pair.first().orElseThrow().text(unit).isEmpty()
            && !pair.second().orElseThrow().text(unit).isEmpty()
            && !pair.first()
                .orElseThrow()
                .text(unit)
                .equals(pair.second().orElseThrow().text(unit));
    return other ? unit : "";
  }

  /** A row of one person alone. */
  static Difference whole(RowPair pair) {
    ReadRow row = pair.any();
    Difference.Value value =
        new Difference.Value(
            shown(row),
            "",
            row.text("place"),
            row.text("words"),
            row.readings().values().stream().findFirst());
    boolean ofFirst = pair.first().isPresent();
    return new Difference(
        pair.key(),
        pair,
        Optional.empty(),
        ofFirst ? value : Difference.Value.NOTHING,
        ofFirst ? Difference.Value.NOTHING : value,
        "");
  }

  private static String shown(ReadRow row) {
    if (row.sheet().equals(Template.CURVES)) {
      return curve(row);
    }
    List<String> texts =
        Template.columns(row.sheet()).stream()
            .filter(column -> isRead(row.sheet(), column.name()))
            .filter(column -> !row.text(column.name()).isEmpty())
            .map(column -> column.title() + ": " + row.text(column.name()))
            .toList();
    String first = texts.stream().limit(MOST_SHOWN).collect(Collectors.joining(", "));
    int more = texts.size() - MOST_SHOWN;
    return more <= 0 ? first : say("extraction.and-more", Map.of("fields", first, "more", more));
  }

  private static FieldsOfRow curve(RowPair pair, ReadRow first, ReadRow second) {
    TemplateColumn share = Template.column(Template.CURVES, "share").orElseThrow();
    if (points(first).equals(points(second))) {
      return new FieldsOfRow(List.of(), List.of(new Compared.Alike(pair, share, curve(first))));
    }
    return new FieldsOfRow(
        List.of(
            new Difference(
                pair.key() + ".share",
                pair,
                Optional.of(share),
                ofCurve(first),
                ofCurve(second),
                "")),
        List.of());
  }

  private static Difference.Value ofCurve(ReadRow row) {
    return new Difference.Value(
        curve(row),
        "",
        row.text("place"),
        row.text("words"),
        row.readings().values().stream().findFirst());
  }

  private static List<Map<String, String>> points(ReadRow row) {
    List<Map<String, String>> points = new ArrayList<>();
    points.add(point(row));
    row.further().forEach(one -> points.add(point(one)));
    return points;
  }

  private static Map<String, String> point(ReadRow row) {
    return row.cells().entrySet().stream()
        .filter(cell -> !NEVER.contains(cell.getKey()))
        .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
  }

  private static String curve(ReadRow row) {
    List<ReadRow> points = new ArrayList<>(row.further());
    points.add(0, row);
    points.removeIf(point -> point.text("share").isEmpty());
    ReadRow last = points.isEmpty() ? row : points.get(points.size() - 1);
    ReadRow start = points.isEmpty() ? row : points.get(0);
    return say(
        "extraction.curve",
        Map.of(
            "points", points.size(),
            "first", start.text("share"),
            "from", start.text("time"),
            "last", last.text("share"),
            "to", last.text("time"),
            "unit", row.text("time_unit")));
  }
}
