package gapwise.server.page.figure;

import gapwise.server.job.PostedForm;
import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;

/**
 * What stands in the fields of the page of a figure, as text; nothing of it has to be right yet.
 *
 * @param texts by name of the field, for every name that there is
 */
public record FigureFields(SortedMap<String, String> texts) {
  /** Which kinds of figures are read. */
  public static final String CURVE = "curve";

  public static final String SCATTER = "scatter";

  /** Every field with what stands in it at first. */
  private static final Map<String, String> FIRST = first();

  public FigureFields {
    SortedMap<String, String> all = new TreeMap<>(FIRST);
    texts.forEach(
        (name, text) -> {
          if (FIRST.containsKey(name)) {
            all.put(name, text);
          }
        });
    texts = Collections.unmodifiableSortedMap(all);
  }

  private static Map<String, String> first() {
    Map<String, String> first = new LinkedHashMap<>();
    for (String empty :
        new String[] {
          "paper", "page", "image", "block", "zoom", "x1-at", "x1-value", "x2-at", "x2-value",
          "y1-at", "y1-value", "y2-at", "y2-value", "points", "arm", "outcome", "unit", "patients",
          "events", "median", "risk", "strokes", "place", "across", "up"
        }) {
      first.put(empty, "");
    }
    first.put("kind", CURVE);
    first.put("shows", "without-event");
    first.put("x-scale", "linear");
    first.put("y-scale", "percent");
    return first;
  }

  /** As an address asks for a page or a picture. */
  static FigureFields of(Context context) {
    SortedMap<String, String> texts = new TreeMap<>();
    for (String name : new String[] {"page", "image", "paper", "kind"}) {
      Optional.ofNullable(context.queryParam(name)).ifPresent(text -> texts.put(name, text));
    }
    return new FigureFields(texts);
  }

  /** As the form was sent. */
  static FigureFields of(PostedForm form) {
    SortedMap<String, String> texts = new TreeMap<>();
    for (String name : FIRST.keySet()) {
      form.values(name).stream().findFirst().ifPresent(text -> texts.put(name, text.strip()));
    }
    return new FigureFields(texts);
  }

  /** What stands in one field. */
  public String text(String name) {
    String text = texts.get(name);
    if (text == null) {
      throw new IllegalArgumentException("no field " + name);
    }
    return text;
  }

  /** Whether a choice is made so. */
  public boolean is(String name, String text) {
    return text(name).equals(text);
  }

  /** With other texts in some. */
  FigureFields with(Map<String, String> others) {
    SortedMap<String, String> texts = new TreeMap<>(texts());
    texts.putAll(others);
    return new FigureFields(texts);
  }

  /** A word that differs where anything that counts differs. */
  public String mark() {
    SortedMap<String, String> counts = new TreeMap<>(texts);
    counts.remove("zoom");
    // A browser ends lines of a form in its own way.
    String all = counts.toString().replaceAll("\\R", "\n");
    return UUID.nameUUIDFromBytes(all.getBytes(StandardCharsets.UTF_8)).toString();
  }
}
