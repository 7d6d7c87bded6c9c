package gapwise.desk;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.Provenance;
import gapwise.evidence.PublishedCurve;
import gapwise.evidence.PublishedCurve.Point;
import gapwise.evidence.Study;
import gapwise.exchange.Template;
import gapwise.exchange.TemplateWords;
import gapwise.exchange.form.NumberForm;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;

/** What differs between the curves of two versions of a study: a sentence, not a line a point. */
final class CurveDifference {
  private record Whose(String arm, String outcome) {}

  private CurveDifference() {}

  static List<StudyDifference.Change> between(Study before, Study after) {
    Map<Whose, PublishedCurve> old = byWhose(before);
    Map<Whose, PublishedCurve> now = byWhose(after);
    Set<Whose> all = new LinkedHashSet<>(now.keySet());
    all.addAll(old.keySet());
    List<StudyDifference.Change> changes = new ArrayList<>();
    for (Whose whose : all) {
      Optional<PublishedCurve> was = Optional.ofNullable(old.get(whose));
      Optional<PublishedCurve> is = Optional.ofNullable(now.get(whose));
      if (!was.equals(is)) {
        changes.addAll(changes(whose, was, is));
      }
    }
    return changes;
  }

  private static List<StudyDifference.Change> changes(
      Whose whose, Optional<PublishedCurve> was, Optional<PublishedCurve> is) {
    Map<String, String> before = told(was);
    Map<String, String> after = told(is);
    if (was.isPresent() && is.isPresent()) {
      if (!was.get().points().equals(is.get().points())) {
        after.merge("share", apart(was.get(), is.get()), String::concat);
      }
      if (before.containsKey("marks") && !was.get().marks().equals(is.get().marks())) {
        after.computeIfPresent("marks", (column, text) -> text + say("desk.curve-other-marks"));
      }
    }
    Set<String> columns = new LinkedHashSet<>(after.keySet());
    columns.addAll(before.keySet());
    return columns.stream()
        .filter(column -> !Objects.equals(before.get(column), after.get(column)))
        .map(
            column ->
                new StudyDifference.Change(
                    Template.CURVES,
                    List.of(whose.arm(), whose.outcome()),
                    List.of(
                        TemplateWords.cell(Template.CURVES, Template.ARM, whose.arm()),
                        TemplateWords.cell(Template.CURVES, Template.OUTCOME, whose.outcome())),
                    Template.column(Template.CURVES, column).orElseThrow(),
                    before.getOrDefault(column, ""),
                    after.getOrDefault(column, "")))
        .toList();
  }

  /** How far two readings of a curve are apart at most, in percentage points. */
  private static String apart(PublishedCurve was, PublishedCurve is) {
    double largest = 0;
    for (Point point : is.points()) {
      largest = Math.max(largest, Math.abs(share(was, point.time()) - share(is, point.time())));
    }
    for (Point point : was.points()) {
      largest = Math.max(largest, Math.abs(share(was, point.time()) - share(is, point.time())));
    }
    return say("desk.curve-apart", Map.of("largest", tenths(largest)));
  }

  private static double share(PublishedCurve curve, double time) {
    double share = curve.points().get(0).share();
    for (Point point : curve.points()) {
      if (point.time() > time) {
        break;
      }
      share = point.share();
    }
    return share;
  }

  private static String tenths(double value) {
    return NumberForm.plainText(Math.rint(10 * value) / 10);
  }

  private static Map<Whose, PublishedCurve> byWhose(Study study) {
    Map<Whose, PublishedCurve> curves = new LinkedHashMap<>();
    study
        .curves()
        .forEach(curve -> curves.put(new Whose(curve.arm(), curve.outcome().code()), curve));
    return curves;
  }

  /** What the curve says, by column; points and the like as one text that tells them apart. */
  private static Map<String, String> told(Optional<PublishedCurve> one) {
    Map<String, String> texts = new LinkedHashMap<>();
    if (one.isEmpty()) {
      return texts;
    }
    PublishedCurve curve = one.get();
    texts.put("time_unit", curve.unit().symbol());
    texts.put("shows", curve.shows().code());
    texts.put("share", points(curve));
    put(
        texts,
        "at_risk",
        curve.atRisk().stream().map(mark -> counted(mark.time(), mark.patients())).toList());
    put(
        texts,
        "last_seen",
        curve.lastSeen().stream().map(seen -> counted(seen.time(), seen.patients())).toList());
    put(texts, "patients", curve.totals().patients());
    put(texts, "events", curve.totals().events());
    OptionalDouble median = curve.totals().median();
    if (median.isPresent()) {
      texts.put("median", NumberForm.plainText(median.getAsDouble()));
    }
    curve
        .marks()
        .ifPresent(
            marks ->
                texts.put("marks", say("desk.curve-marks", Map.of("letters", marks.length()))));
    Provenance provenance = curve.provenance();
    provenance.place().ifPresent(text -> texts.put("place", text));
    provenance.words().ifPresent(text -> texts.put("words", text));
    curve.note().ifPresent(text -> texts.put("note", text));
    return texts;
  }

  private static String points(PublishedCurve curve) {
    Point first = curve.points().get(0);
    Point last = curve.points().get(curve.points().size() - 1);
    return say(
        "desk.curve-points",
        Map.of(
            "points",
            curve.points().size(),
            "first",
            NumberForm.plainText(first.share()),
            "from",
            NumberForm.plainText(first.time()),
            "last",
            NumberForm.plainText(last.share()),
            "to",
            NumberForm.plainText(last.time()),
            "unit",
            curve.unit().symbol()));
  }

  private static String counted(double time, int patients) {
    return patients + " at " + NumberForm.plainText(time);
  }

  private static void put(Map<String, String> texts, String column, List<String> parts) {
    if (!parts.isEmpty()) {
      texts.put(column, parts.stream().collect(Collectors.joining(", ")));
    }
  }

  private static void put(Map<String, String> texts, String column, OptionalInt count) {
    if (count.isPresent()) {
      texts.put(column, String.valueOf(count.getAsInt()));
    }
  }
}
